#pragma once

#include <functional>
#include <stop_token>
#include <utility>

#include "core/base/error.h"

namespace drapewright {

/// How a long computation tells how far it is, and hears that it is no longer wanted. Passed by
/// value; a default one reports to nobody and never stops.
class Progress {
 public:
  Progress() = default;
  explicit Progress(std::stop_token stop, std::function<void(double)> report = {})
      : stop_(std::move(stop)), report_(std::move(report)) {}

  /// @param fraction 0 to 1
  /// @throws Cancelled when a stop was asked for
  void at(double fraction) const {
    if (stop_.stop_requested()) throw Cancelled();
    if (report_) report_(fraction);
  }
  bool stop_requested() const { return stop_.stop_requested(); }

 private:
  std::stop_token stop_;
  std::function<void(double)> report_;
};

}  // namespace drapewright
