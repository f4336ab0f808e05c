#include "app/desktop/photo/mark_tools.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/photo/photo_desk.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

void MarkTool::point_put() {
  if (!photo_.has_photo()) {
    take_points();
    return desk().say(spoken("Open a photograph first."));
  }
  if (points().size() == count_) marked(take_points());
}

void MarkTool::paint_drawing(QPainter& painter) const {
  if (points().empty()) return;
  paint_line(painter, points_and_pen(), false);
  painter.setPen(QPen(view().palette().color(QPalette::WindowText), 2));
  painter.setBrush(Qt::NoBrush);
  for (const geometry::Point& p : points()) painter.drawEllipse(view().to_pixels(p), 6, 6);
}

void LengthMarkTool::marked(const geometry::Ring& places) { photo().mark_length(places); }

void SquareMarkTool::marked(const geometry::Ring& places) { photo().mark_square(places); }

void AxisMarkTool::marked(const geometry::Ring& places) { photo().mark_axis(places); }

}  // namespace drapewright::desktop
