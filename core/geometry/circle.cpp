#include "core/geometry/circle.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <queue>
#include <stdexcept>
#include <vector>

#include "core/geometry/edge_tree.h"
#include "core/geometry/measures.h"

namespace drapewright::geometry {
namespace {

/// A square in which the centre of the largest circle may lie.
struct Cell {
  Point centre;
  double half = 0;       ///< half its side
  double clearance = 0;  ///< of its centre: distance to the edge, negative outside
  /// No point of the cell has more clearance: it cannot grow faster than the way to it.
  double bound() const { return clearance + half * root_of_two; }
  friend bool operator<(const Cell& a, const Cell& b) { return a.bound() < b.bound(); }

  static constexpr double root_of_two = 1.41421356237309505;
};

double clearance(const EdgeTree& edges, Point p) {
  const double to_edge = std::sqrt(edges.nearest(p).squared);
  return edges.inside(p) ? to_edge : -to_edge;
}

class Search {
 public:
  /// @param centres  where the centre may lie; nullptr: anywhere
  Search(const Region& region, const Region* centres, double tolerance_cm)
      : edges_(edges_of(region)), tolerance_cm_(tolerance_cm) {
    if (centres != nullptr) centres_.emplace(edges_of(*centres));
    for (const Polygon& polygon : region) {
      if (polygon.outer.size() >= 3) cover(polygon);
    }
  }

  Circle run() {
    // Cells by falling bound: when the best of those left cannot beat the best found, it is over.
    while (!cells_.empty() && cells_.top().bound() > best_.radius_cm + tolerance_cm_) {
      const Cell cell = cells_.top();
      cells_.pop();
      const double quarter = cell.half / 2;
      for (const Point step : {Point{-1, -1}, Point{1, -1}, Point{1, 1}, Point{-1, 1}}) {
        consider(cell.centre + quarter * step, quarter);
      }
    }
    return best_;
  }

 private:
  void cover(const Polygon& polygon) {
    consider(centroid(Region{polygon}), 0);  // a good first guess prunes early
    const Box box = bounding_box(polygon.outer);
    const auto [narrow, wide] = std::minmax({box.width(), box.height()});
    const double side = std::max({narrow, wide / most_cells_along, tolerance_cm_});
    for (double x = box.low.x; x < box.high.x; x += side) {
      for (double y = box.low.y; y < box.high.y; y += side) {
        consider({x + side / 2, y + side / 2}, side / 2);
      }
    }
  }
  void consider(Point centre, double half) {
    const Cell cell{centre, half, clearance(edges_, centre)};
    const double allowed = centres_ ? clearance(*centres_, centre) : 0;
    if (cell.clearance > best_.radius_cm && allowed >= 0) best_ = {centre, cell.clearance};
    const bool hopeless = -allowed > half * Cell::root_of_two;  // no allowed centre in the cell
    if (half > tolerance_cm_ / 4 && !hopeless && cell.bound() > best_.radius_cm + tolerance_cm_) {
      cells_.push(cell);
    }
  }

  static constexpr double most_cells_along = 64;  // a hair-thin region must not start with millions

  EdgeTree edges_;
  std::optional<EdgeTree> centres_;
  double tolerance_cm_;
  Circle best_;
  std::priority_queue<Cell> cells_;
};

}  // namespace

namespace {

std::optional<Circle> largest_circle(const Region& region, const Region* centres,
                                     double tolerance_cm) {
  if (!(std::isfinite(tolerance_cm) && tolerance_cm > 0)) {
    throw std::invalid_argument("a circle's tolerance is not > 0");
  }
  if (!(area(region) > 0) || (centres != nullptr && centres->empty())) return std::nullopt;
  const Circle best = Search(region, centres, tolerance_cm).run();
  return best.radius_cm > 0 ? std::optional(best) : std::nullopt;
}

}  // namespace

std::optional<Circle> largest_inscribed_circle(const Region& region, double tolerance_cm) {
  return largest_circle(region, nullptr, tolerance_cm);
}

std::optional<Circle> largest_circle_centred_in(const Region& region, const Region& centres,
                                                double tolerance_cm) {
  return largest_circle(region, &centres, tolerance_cm);
}

}  // namespace drapewright::geometry
