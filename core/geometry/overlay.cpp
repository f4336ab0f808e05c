#include "core/geometry/overlay.h"

#include <algorithm>
#include <boost/polygon/polygon.hpp>
#include <cmath>
#include <cstdint>
#include <optional>
#include <stdexcept>

#include "core/base/tolerances.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/ring_mending.h"
#include "core/geometry/winding.h"

namespace drapewright::geometry {
namespace {

namespace bp = boost::polygon;
using Set = bp::polygon_set_data<int>;
using GridPoint = bp::point_data<int>;
using GridPolygon = bp::polygon_with_holes_data<int>;

/// The integer grid, laid about the shapes themselves: coordinates far from the drawing's origin
/// cost neither range nor digits. Its own origin is a grid point, so that shapes that came from
/// an overlay lie on the next one's grid.
class Grid {
 public:
  explicit Grid(const Box& box) {
    origin_ = {steps(box.low.x + box.width() / 2), steps(box.low.y + box.height() / 2)};
  }

  GridPoint snap(Point p) const {
    const Point at{steps(p.x) - origin_.x, steps(p.y) - origin_.y};
    if (!(std::abs(at.x) < most_steps && std::abs(at.y) < most_steps)) {
      throw std::invalid_argument("an overlay's shapes are not finite or too far apart");
    }
    return {static_cast<int>(at.x), static_cast<int>(at.y)};
  }
  Point back(const GridPoint& p) const {
    return {tolerance::grid_cm * (origin_.x + p.x()), tolerance::grid_cm * (origin_.y + p.y())};
  }

 private:
  static double steps(double cm) { return std::round(cm / tolerance::grid_cm); }

  /// Less than half of what 32 bits hold, so that differences between coordinates fit as well.
  static constexpr double most_steps = 1e9;
  Point origin_;  // in grid steps, whole numbers
};

void insert(Set& set, const Grid& grid, const Ring& ring, bool is_hole) {
  std::vector<GridPoint> points;
  points.reserve(ring.size());
  for (const Point& p : ring) points.push_back(grid.snap(p));
  const auto sense = signed_area(ring) > 0 ? bp::COUNTERCLOCKWISE : bp::CLOCKWISE;
  set.insert_vertex_sequence(points.begin(), points.end(), sense, is_hole);
}

void insert(Set& set, const Grid& grid, const Region& region) {
  for (const Polygon& polygon : region) {
    insert(set, grid, polygon.outer, false);
    for (const Ring& hole : polygon.holes) insert(set, grid, hole, true);
  }
}

template <class GridRing>
Ring ring_of(const GridRing& from, const Grid& grid) {
  Ring ring;
  for (const GridPoint& p : from) ring.push_back(grid.back(p));
  return ring;
}

/// Narrower than the grid on the average: what rounding leaves between shapes that touch.
bool is_sliver(const Ring& ring) { return area(ring) <= tolerance::grid_cm * edge_length(ring); }

/// Collects simple loops, outer ones counter-clockwise and holes clockwise, and puts each hole
/// into its outer ring.
class Assembly {
 public:
  /// @param likely_outer  index of the outer ring that the hole was found in
  void add(const Ring& ring, std::size_t likely_outer) {
    for (const Ring& loop : loops_of(ring)) {
      Ring clean = mended(loop).ring;
      if (clean.empty() || is_sliver(clean)) continue;
      if (signed_area(clean) > 0) {
        region_.push_back({std::move(clean), {}});
      } else {
        holes_.push_back({std::move(clean), likely_outer});
      }
    }
  }
  std::size_t outer_count() const { return region_.size(); }

  Region take() {
    for (Hole& hole : holes_) {
      if (const auto outer = outer_of(hole)) region_[*outer].holes.push_back(std::move(hole.ring));
    }
    return std::move(region_);
  }

 private:
  struct Hole {
    Ring ring;
    std::size_t likely_outer;
  };

  bool holds(std::size_t outer, const Ring& hole) const {
    const Polygon polygon{region_[outer].outer, {}};
    return std::all_of(hole.begin(), hole.end(),
                       [&](const Point& p) { return contains(polygon, p); });
  }
  /// The smallest outer ring that holds the hole; nothing for a hole in a dropped sliver.
  std::optional<std::size_t> outer_of(const Hole& hole) const {
    if (region_.size() == 1) return 0;
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < region_.size(); ++i) {
      const bool smaller = !best || area(region_[i].outer) < area(region_[*best].outer);
      if (smaller && holds(i, hole.ring)) best = i;
    }
    return best ? best : fallback(hole);
  }
  std::optional<std::size_t> fallback(const Hole& hole) const {
    if (hole.likely_outer < region_.size()) return hole.likely_outer;
    return std::nullopt;
  }

  Region region_;
  std::vector<Hole> holes_;
};

Region region_of(const Set& set, const Grid& grid) {
  std::vector<GridPolygon> polygons;
  set.get(polygons);
  Assembly assembly;
  for (const GridPolygon& polygon : polygons) {
    const std::size_t outer = assembly.outer_count();
    const Ring ring = ring_of(polygon, grid);
    assembly.add(signed_area(ring) < 0 ? reversed(ring) : ring, outer);
    for (auto hole = polygon.begin_holes(); hole != polygon.end_holes(); ++hole) {
      const Ring inner = ring_of(*hole, grid);
      assembly.add(signed_area(inner) > 0 ? reversed(inner) : inner, outer);
    }
  }
  return assembly.take();
}

Ring ring_round(Point low, Point high) { return {low, {high.x, low.y}, high, {low.x, high.y}}; }

std::optional<Box> joint_box(std::span<const Region> regions) {
  std::vector<Point> points;
  for (const Region& region : regions) {
    const auto some = outer_points(region);
    points.insert(points.end(), some.begin(), some.end());
  }
  if (points.empty()) return std::nullopt;
  return bounding_box(points);
}

bool apart(const Region& a, const Region& b) {
  if (a.empty() || b.empty()) return true;
  const Box p = bounding_box(outer_points(a));
  const Box q = bounding_box(outer_points(b));
  return p.high.x < q.low.x || q.high.x < p.low.x || p.high.y < q.low.y || q.high.y < p.low.y;
}

template <class Combine>
Region combined(const Region& a, const Region& b, Combine combine) {
  const Region both[] = {a, b};
  const auto box = joint_box(both);
  if (!box) return {};
  const Grid grid(*box);
  Set first;
  Set second;
  insert(first, grid, a);
  insert(second, grid, b);
  combine(first, second);
  return region_of(first, grid);
}

}  // namespace

Region unite(std::span<const Region> regions) {
  const auto box = joint_box(regions);
  if (!box) return {};
  const Grid grid(*box);
  Set set;
  for (const Region& region : regions) insert(set, grid, region);
  return region_of(set, grid);
}

Region unite(const Region& a, const Region& b) {
  const Region both[] = {a, b};
  return unite(both);
}

Region intersect(const Region& a, const Region& b) {
  if (apart(a, b)) return {};
  using namespace bp::operators;
  return combined(a, b, [](Set& x, const Set& y) { x &= y; });
}

Region subtract(const Region& a, const Region& b) {
  using namespace bp::operators;
  return combined(a, b, [](Set& x, const Set& y) { x -= y; });
}

bool overlap(const Region& a, const Region& b, double least_cm2) {
  return area(intersect(a, b)) > least_cm2;
}

Region wrongly_wound(const Ring& ring) {
  if (ring.empty()) return {};
  const Box box = bounding_box(ring);
  const Grid grid(box);
  // Boost.Polygon counts a place as inside when its winding number is above 0. With a frame that
  // winds the other way all round, that is where the ring's own number is 2 or more.
  const Point room{1, 1};
  const Ring frame = ring_round(box.low - room, box.high + room);
  Set more_than_once;
  insert(more_than_once, grid, ring, false);
  insert(more_than_once, grid, frame, true);
  Set backwards;
  insert(backwards, grid, ring, true);
  Region wrong = region_of(more_than_once, grid);
  const Region turned_round = region_of(backwards, grid);
  wrong.insert(wrong.end(), turned_round.begin(), turned_round.end());
  return wrong;
}

}  // namespace drapewright::geometry
