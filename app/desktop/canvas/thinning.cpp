#include "app/desktop/canvas/thinning.h"

namespace drapewright::desktop {

using geometry::Point;

namespace {

constexpr std::size_t few_points = 24;

/// Drops points nearer to the last kept one than the tolerance; each lies that near to the line
/// that is drawn instead.
std::vector<Point> thinned(const std::vector<Point>& chain, double tolerance_cm) {
  if (chain.size() <= few_points) return chain;
  std::vector<Point> kept;
  for (const Point p : chain) {
    if (kept.empty() || geometry::distance(kept.back(), p) >= tolerance_cm) kept.push_back(p);
  }
  return kept.size() < 3 ? chain : kept;
}

}  // namespace

report::Sketch thinned(const report::Sketch& sketch, double tolerance_cm) {
  report::Sketch result = sketch;
  for (report::SketchLayer& layer : result.layers) {
    for (geometry::Polygon& polygon : layer.areas) {
      polygon.outer = thinned(polygon.outer, tolerance_cm);
      for (geometry::Ring& hole : polygon.holes) hole = thinned(hole, tolerance_cm);
    }
  }
  return result;
}

}  // namespace drapewright::desktop
