#pragma once

#include <QScrollArea>

class QLabel;
class QVBoxLayout;

namespace drapewright::desktop {

/// A column of sections that scrolls up and down; sideways only where large text leaves no room.
class Page : public QScrollArea {
  Q_OBJECT

 public:
  explicit Page(const QString& name, QWidget* parent = nullptr);

  /// Starts a section with its title.
  void add_heading(const QString& title);
  void add(QWidget* widget);
  void add_stretch();
  /// It asks for no more than that, and scrolls sideways where its content needs more.
  /// QWIDGETSIZE_MAX: as wide as its content.
  void set_most_width(int px);

  QSize minimumSizeHint() const override;
  QSize sizeHint() const override { return minimumSizeHint(); }

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QVBoxLayout* column_;
  int most_width_ = QWIDGETSIZE_MAX;
};

/// A section's title: bold, and read out as a heading's text.
QLabel* heading(const QString& title, QWidget* parent = nullptr);

}  // namespace drapewright::desktop
