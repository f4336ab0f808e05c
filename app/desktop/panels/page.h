#pragma once

#include <QScrollArea>

class QLabel;
class QVBoxLayout;

namespace drapewright::desktop {

/// A column of sections that scrolls up and down, never sideways.
class Page : public QScrollArea {
  Q_OBJECT

 public:
  explicit Page(const QString& name, QWidget* parent = nullptr);

  /// Starts a section with its title.
  void add_heading(const QString& title);
  void add(QWidget* widget);
  void add_stretch();

  QSize minimumSizeHint() const override;
  QSize sizeHint() const override { return minimumSizeHint(); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QVBoxLayout* column_;
};

/// A section's title: bold, and read out as a heading's text.
QLabel* heading(const QString& title, QWidget* parent = nullptr);

}  // namespace drapewright::desktop
