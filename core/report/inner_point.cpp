#include "core/report/inner_point.h"

#include <algorithm>
#include <utility>
#include <vector>

namespace drapewright::report {

using geometry::Point;
using geometry::Polygon;
using geometry::Ring;

namespace {

void add_crossings(const Ring& ring, double y, std::vector<double>& crossings) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i];
    const Point b = ring[(i + 1) % ring.size()];
    if ((a.y <= y) == (b.y <= y)) continue;
    crossings.push_back(a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y));
  }
}

/// The widest stretch of the polygon at height y: its left end and its width (0: none).
std::pair<double, double> widest_stretch(const Polygon& polygon, double y) {
  std::vector<double> crossings;
  add_crossings(polygon.outer, y, crossings);
  for (const Ring& hole : polygon.holes) add_crossings(hole, y, crossings);
  std::ranges::sort(crossings);
  std::pair<double, double> widest{0, 0};
  for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) {
    const double width = crossings[i + 1] - crossings[i];
    if (width > widest.second) widest = {crossings[i], width};
  }
  return widest;
}

}  // namespace

Point inner_point(const Polygon& polygon) {
  const auto [low, high] = std::ranges::minmax(polygon.outer, {}, &Point::y);
  Point best = polygon.outer.front();
  double best_worth = 0;
  // Cuts near the middle first: a little less width is worth being central.
  for (const double part : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
    const double y = low.y + part * (high.y - low.y);
    const auto [left, width] = widest_stretch(polygon, y);
    const double worth = width * (1 - std::abs(part - 0.5));
    if (worth > best_worth) {
      best_worth = worth;
      best = {left + width / 2, y};
    }
  }
  return best;
}

}  // namespace drapewright::report
