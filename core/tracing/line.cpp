#include "core/tracing/line.h"

#include <cmath>

namespace drapewright::tracing {

using geometry::Point;

double line_length(std::span<const Point> line) {
  double sum = 0;
  for (std::size_t i = 1; i < line.size(); ++i) sum += geometry::distance(line[i - 1], line[i]);
  return sum;
}

double corner_angle_deg(Point before, Point corner, Point after) {
  const Point a = before - corner, b = after - corner;
  return geometry::degrees(std::abs(std::atan2(geometry::cross(a, b), geometry::dot(a, b))));
}

}  // namespace drapewright::tracing
