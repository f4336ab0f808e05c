#include "core/geometry/crossings.h"

#include <algorithm>

namespace drapewright::geometry {
namespace {

/// Where the whole line through a segment crosses a ring, in cm from the segment's start. A corner
/// on the line counts as lying to its left, so that every ring is crossed an even number of times.
void add_crossings(const Segment& segment, Point along, const Ring& ring,
                   std::vector<double>& crossings) {
  const auto side = [&](Point p) { return cross(along, p - segment.from); };
  const auto place = [&](Point p) { return dot(along, p - segment.from); };
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i], b = ring[i + 1 < ring.size() ? i + 1 : 0];
    const double from = side(a), to = side(b);
    if ((from >= 0) == (to >= 0)) continue;
    const double share = from / (from - to);
    crossings.push_back(place(a) + share * (place(b) - place(a)));
  }
}

}  // namespace

std::vector<Span> spans_inside(const Segment& segment, const Region& region) {
  const double length_cm = distance(segment.from, segment.to);
  if (!(length_cm > 0)) return {};
  const Point along = (1 / length_cm) * (segment.to - segment.from);
  std::vector<double> crossings;
  for (const Polygon& polygon : region) {
    add_crossings(segment, along, polygon.outer, crossings);
    for (const Ring& hole : polygon.holes) add_crossings(segment, along, hole, crossings);
  }
  std::ranges::sort(crossings);
  std::vector<Span> spans;
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
    const Span span{std::max(0.0, crossings[i]), std::min(length_cm, crossings[i + 1])};
    if (span.length_cm() > 0) spans.push_back(span);
  }
  return spans;
}

}  // namespace drapewright::geometry
