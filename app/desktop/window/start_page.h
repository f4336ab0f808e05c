#pragma once

#include <QWidget>
#include <functional>

#include "app/desktop/tools/tracing_desk.h"

class QVBoxLayout;

namespace drapewright::desktop {

/// What stands in the middle while there is nothing to draw: what to do first.
class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(QWidget* parent = nullptr);

 signals:
  void tool_wanted(drapewright::desktop::Tool tool);
  void size_wanted();
  void photo_wanted();
  void open_wanted();
  void demo_wanted(const QString& name);

 private:
  void add_way(const QString& text, const QString& name, const QString& says,
               std::function<void()> go);
  void add_demos();

  QVBoxLayout* column_;
};

}  // namespace drapewright::desktop
