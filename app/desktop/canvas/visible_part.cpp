#include "app/desktop/canvas/visible_part.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace drapewright::desktop {

using geometry::Box;
using geometry::Point;
using geometry::Ring;

namespace {

constexpr std::size_t few_points = 24;

/// Bounds of the directions in which all points since the anchor lie within the tolerance of one
/// line from it (cone intersection: Williams 1978, Sklansky and Gonzalez 1980, from memory).
class Cone {
 public:
  Cone(Point anchor, double tolerance) : anchor_(anchor), tolerance_(tolerance) {}

  /// False when a line from the anchor to p misses a point before it by more than the tolerance.
  bool admits(Point p) {
    const Point way = p - anchor_;
    const double distance = geometry::norm(way);
    // Turning back, or near the anchor again after having left it: no line to p covers the rest.
    if (distance <= tolerance_) return farthest_ <= 2 * tolerance_;
    if (distance < farthest_ - tolerance_) return false;
    farthest_ = std::max(farthest_, distance);
    if (!has_first_) {
      first_ = way;
      has_first_ = true;
    }
    const double angle = std::atan2(geometry::cross(first_, way), geometry::dot(first_, way));
    if (angle < low_ || angle > high_) return false;
    const double half = std::asin(tolerance_ / distance);
    low_ = std::max(low_, angle - half);
    high_ = std::min(high_, angle + half);
    return true;
  }

 private:
  Point anchor_;
  double tolerance_;
  double farthest_ = 0;
  bool has_first_ = false;
  Point first_;
  double low_ = -geometry::pi, high_ = geometry::pi;
};

Ring thinned(const Ring& ring, double tolerance) {
  if (ring.size() <= few_points) return ring;
  Ring kept{ring.front()};
  Cone cone(ring.front(), tolerance);
  for (std::size_t i = 1; i < ring.size(); ++i) {
    if (cone.admits(ring[i])) continue;
    kept.push_back(ring[i - 1]);
    cone = Cone(ring[i - 1], tolerance);
    cone.admits(ring[i]);
  }
  kept.push_back(ring.back());
  return kept.size() < 3 ? ring : kept;
}

/// Cut off at one side of the window (Sutherland and Hodgman 1974): `spare` is positive inside.
template <class Spare>
Ring cut(const Ring& ring, Spare spare) {
  Ring inside;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i];
    const Point b = ring[(i + 1) % ring.size()];
    const double at_a = spare(a), at_b = spare(b);
    if (at_a >= 0) inside.push_back(a);
    if ((at_a >= 0) != (at_b >= 0)) inside.push_back(a + (at_a / (at_a - at_b)) * (b - a));
  }
  return inside;
}

Ring cut(const Ring& ring, const Box& window) {
  if (ring.empty()) return ring;
  const Box box = geometry::bounding_box(ring);
  if (box.low.x >= window.low.x && box.low.y >= window.low.y && box.high.x <= window.high.x &&
      box.high.y <= window.high.y) {
    return ring;
  }
  Ring rest = cut(ring, [&](Point p) { return p.x - window.low.x; });
  rest = cut(rest, [&](Point p) { return window.high.x - p.x; });
  rest = cut(rest, [&](Point p) { return p.y - window.low.y; });
  return cut(rest, [&](Point p) { return window.high.y - p.y; });
}

}  // namespace

report::Sketch visible_part(const report::Sketch& sketch, const Box& window, double tolerance_cm) {
  report::Sketch part;
  part.captions = sketch.captions;
  part.dimensions = sketch.dimensions;
  part.keep_clear = sketch.keep_clear;
  part.extent = sketch.extent;
  part.head_direction_deg = sketch.head_direction_deg;
  part.twelve = sketch.twelve;
  const auto shown = [&](const Ring& ring) { return thinned(cut(ring, window), tolerance_cm); };
  for (const report::SketchLayer& layer : sketch.layers) {
    report::SketchLayer& rest = part.layers.emplace_back(report::SketchLayer{layer.kind, {}, {}});
    rest.chains = layer.chains;
    for (const geometry::Polygon& polygon : layer.areas) {
      geometry::Polygon seen{shown(polygon.outer), {}};
      if (seen.outer.empty()) continue;
      for (const Ring& hole : polygon.holes) {
        if (Ring ring = shown(hole); !ring.empty()) seen.holes.push_back(std::move(ring));
      }
      rest.areas.push_back(std::move(seen));
    }
  }
  return part;
}

}  // namespace drapewright::desktop
