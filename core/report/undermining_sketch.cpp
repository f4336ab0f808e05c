#include "core/report/undermining_sketch.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "core/geometry/clock.h"

namespace drapewright::report {

using geometry::Point;
using geometry::Polygon;

namespace {

constexpr double step_deg = 3;
constexpr double close_enough_cm = 0.005;  ///< far below a line's width
constexpr int most_steps = 60;

Point unit(double direction_deg) {
  return {std::cos(geometry::radians(direction_deg)), std::sin(geometry::radians(direction_deg))};
}

}  // namespace

UnderminingSketch::UnderminingSketch(const geometry::Ring& outline, Point centre,
                                     double head_direction_deg)
    : edges_(geometry::Region{Polygon{outline, {}}}),
      centre_(centre),
      head_deg_(head_direction_deg),
      reach_cm_(0) {
  for (const Point p : outline) reach_cm_ = std::max(reach_cm_, geometry::distance(centre, p));
}

// Sphere tracing: from outside all reach inwards, each step as long as the distance to the edge
// allows, so no point nearer than the extent is jumped over.
Point UnderminingSketch::at_extent(double direction_deg, double extent_cm) const {
  const Point out = unit(direction_deg);
  double along = reach_cm_ + extent_cm + close_enough_cm;
  for (int step = 0; step < most_steps && along > 0; ++step) {
    const double spare = edges_.nearest(centre_ + along * out).distance_cm - extent_cm;
    if (spare < close_enough_cm) break;
    along -= spare;
  }
  return centre_ + std::max(along, 0.0) * out;
}

Polygon UnderminingSketch::pocket(const wound::Undermining& undermining) const {
  const double span_deg = 30 * geometry::clock_span(undermining.from_clock, undermining.to_clock);
  const double from_deg = geometry::clock_direction_deg(undermining.from_clock, head_deg_);
  const int steps = std::max(2, static_cast<int>(std::ceil(span_deg / step_deg)));
  std::vector<Point> far, near;
  for (int i = 0; i <= steps; ++i) {
    const double direction = from_deg - span_deg * i / steps;
    far.push_back(at_extent(direction, undermining.extent_cm));
    near.push_back(at_extent(direction, 0));
  }
  far.insert(far.end(), near.rbegin(), near.rend());
  return {far, {}};
}

geometry::Segment UnderminingSketch::tunnel(const wound::Tunnel& tunnel) const {
  const double direction = geometry::clock_direction_deg(tunnel.clock, head_deg_);
  const Point start = at_extent(direction, 0);
  return {start, start + tunnel.length_cm * unit(direction)};
}

}  // namespace drapewright::report
