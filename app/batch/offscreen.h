#pragma once

#include <QGuiApplication>
#include <string>

namespace drapewright::batch {

/// Qt paints text only with an application, which here must not look for a display, nor tell the
/// user about the desktop that it misses. Lives as long as something is painted.
class Offscreen {
 public:
  Offscreen();

 private:
  static bool prepared();

  int count_ = 1;
  std::string name_ = "drapewright-batch";
  char* arguments_[2] = {name_.data(), nullptr};
  bool prepared_;
  QGuiApplication application_;
};

}  // namespace drapewright::batch
