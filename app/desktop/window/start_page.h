#pragma once

#include <QWidget>

namespace drapewright::desktop {

/// What stands in the middle while there is nothing to draw: what to do first.
class StartPage : public QWidget {
  Q_OBJECT

 public:
  explicit StartPage(QWidget* parent = nullptr);

 signals:
  void open_wanted();
  void demo_wanted(const QString& name);
};

}  // namespace drapewright::desktop
