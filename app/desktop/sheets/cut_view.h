#pragma once

#include <QWidget>
#include <memory>

#include "core/dressing/plan.h"
#include "core/report/drawing.h"

namespace drapewright::desktop {

/// The filler sheets to open with their pieces, to scale and as large as the width allows; as high
/// as they need. Observes a plan and changes nothing.
class CutView : public QWidget {
  Q_OBJECT

 public:
  explicit CutView(QWidget* parent = nullptr);

  void show_plan(std::shared_ptr<const dressing::Plan> plan);
  /// What is drawn; without a plan an empty one.
  const report::Drawing& drawing() const { return drawing_; }
  /// The room that the drawing should do with, if it can.
  void set_room(QSize pixels);

 protected:
  void paintEvent(QPaintEvent* event) override;
  void changeEvent(QEvent* event) override;

 private:
  double pixels_per_mm() const { return logicalDpiX() / 25.4; }
  void draw();

  std::shared_ptr<const dressing::Plan> plan_;
  report::Drawing drawing_;
  QSize room_{400, 300};
};

}  // namespace drapewright::desktop
