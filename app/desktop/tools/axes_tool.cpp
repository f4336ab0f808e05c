#include "app/desktop/tools/axes_tool.h"

#include <cmath>

#include "app/desktop/canvas/plan_view.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr double least_cm = 0.05;

}  // namespace

std::optional<AxesTool::Axes> AxesTool::axes(const Ring& three) const {
  if (three.size() != 3) return std::nullopt;
  const Point along = three[1] - three[0];
  const double length = geometry::norm(along);
  if (length < least_cm) return std::nullopt;
  const Point centre = 0.5 * (three[0] + three[1]);
  const double half = std::abs(geometry::cross(along, three[2] - centre)) / length;
  if (half < least_cm / 2) return std::nullopt;
  return Axes{centre, length, 2 * half, geometry::degrees(std::atan2(along.y, along.x))};
}

void AxesTool::point_put() {
  if (points().size() < 3) return;
  const auto found = axes(take_points());
  if (!found) return desk().say(spoken("Too narrow: nothing was drawn."));
  desk().offer(shape(*found), what());
}

void AxesTool::paint_drawing(QPainter& painter) const {
  if (points().empty()) return;
  const Ring line = points_and_pen();
  if (const auto found = axes(line)) paint_line(painter, shape(*found), true);
  paint_line(painter, {line[0], line[1 % line.size()]}, false);
}

QStringList AxesTool::words() const {
  const Ring line = points_and_pen();
  if (points().empty() || line.size() < 2) return {};
  QStringList lines{spoken("length {1}", {length_words(geometry::distance(line[0], line[1]))})};
  if (const auto found = axes(line)) lines << spoken("width {1}", {length_words(found->width_cm)});
  return lines;
}

}  // namespace drapewright::desktop
