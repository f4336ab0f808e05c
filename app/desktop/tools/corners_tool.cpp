#include "app/desktop/tools/corners_tool.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/outline_ink.h"
#include "app/wording/spoken.h"
#include "core/tracing/loops.h"

namespace drapewright::desktop {
using geometry::Point;
using geometry::Ring;

std::optional<Point> CornersTool::crossing() const {
  return tracing::last_edge_crossing(points_and_pen());
}

void CornersTool::point_put() {
  const Ring& line = points();
  if (line.size() >= 4 && line.back() == line.front()) finish();
}

void CornersTool::finish() {
  Ring ring = take_points();
  while (ring.size() > 1 && ring.back() == ring.front()) ring.pop_back();
  if (ring.size() >= 3) return desk().offer(std::move(ring), spoken("corners"));
  if (!ring.empty()) desk().say(spoken("An outline has three corners or more."));
}

void CornersTool::paint_drawing(QPainter& painter) const {
  if (points().empty()) return;
  const auto where = crossing();
  paint_line(painter, points_and_pen(), false, where.has_value());
  painter.setPen(QPen(view().palette().color(QPalette::WindowText), 2));
  painter.setBrush(view().palette().color(QPalette::Base));
  for (const Point& p : points()) painter.drawEllipse(view().to_pixels(p), 4, 4);
  painter.drawEllipse(view().to_pixels(points().front()), 7, 7);
  if (where) paint_crossing(painter, view(), *where);
}

QStringList CornersTool::words() const {
  const Ring line = points_and_pen();
  if (points().empty() || line.size() < 2) return {};
  if (crossing()) return {spoken("This edge crosses another.")};
  QStringList lines{length_words(geometry::distance(line[line.size() - 2], line.back()))};
  if (line.size() >= 3) {
    lines << angle_words(line);
  }
  return lines;
}

}  // namespace drapewright::desktop
