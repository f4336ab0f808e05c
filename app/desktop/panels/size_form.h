#pragma once

#include <QWidget>

#include "core/geometry/shape.h"

class QPushButton;

namespace drapewright::desktop {

class LimitedField;
class NumberField;

/// Length x width, as a ruler gives them, to an ellipse or a rectangle.
class SizeForm : public QWidget {
  Q_OBJECT

 public:
  enum class Shape { ellipse, rectangle };
  explicit SizeForm(QWidget* parent = nullptr);

  void set_shape(Shape shape);
  /// Where the shape's middle is put unless the user says otherwise.
  void set_centre(geometry::Point centre);
  void set_head_direction(double degrees) { head_deg_ = degrees; }
  /// What pressing the button does: "Draw the ellipse", or "Replace ... by the ellipse".
  void set_replaces(bool replaces);
  /// Puts the keyboard into the length.
  void start();

 signals:
  void drawn(const drapewright::geometry::Ring& ring, const QString& what);

 protected:
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  void build();
  void follow();
  void draw();

  Shape shape_ = Shape::ellipse;
  bool replaces_ = false;
  double head_deg_ = 90;
  LimitedField* length_;
  LimitedField* width_;
  NumberField* hour_;
  NumberField* x_;
  NumberField* y_;
  QPushButton* draw_;
};

}  // namespace drapewright::desktop
