#include "core/tracing/edge_place.h"

#include <limits>

#include "core/geometry/distance.h"

namespace drapewright::tracing {

using geometry::Point;
using geometry::Ring;

EdgePlace nearest_on_edge(const Ring& ring, Point p) {
  EdgePlace best{.distance_cm = std::numeric_limits<double>::infinity()};
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const geometry::Segment edge{ring[i], ring[(i + 1) % ring.size()]};
    const Point at = geometry::nearest_on(edge, p);
    const double far = geometry::distance(at, p);
    if (far >= best.distance_cm) continue;
    const double length = geometry::distance(edge.from, edge.to);
    best = {i, length > 0 ? geometry::distance(edge.from, at) / length : 0, at, far};
  }
  if (best.part >= 1) {
    best.edge = (best.edge + 1) % ring.size();
    best.part = 0;
  }
  return best;
}

Ring stretch_between(const Ring& ring, const EdgePlace& from, const EdgePlace& to) {
  Ring result{from.at};
  const std::size_t count = ring.size();
  const bool passes_start = to.along() < from.along();
  const std::size_t last = to.edge + (passes_start ? count : 0);
  for (std::size_t i = from.edge + 1; i <= last; ++i) {
    if (!(ring[i % count] == result.back())) result.push_back(ring[i % count]);
  }
  if (!(result.back() == to.at)) result.push_back(to.at);
  return result;
}

}  // namespace drapewright::tracing
