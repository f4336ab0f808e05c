#include "core/geometry/medial/outline.h"

#include <algorithm>
#include <cmath>

#include "core/base/tolerances.h"
#include "core/geometry/medial/thinning.h"

namespace drapewright::geometry::medial {
namespace {

/// Twice the signed area and six times the first moment of a ring seen from `origin`.
struct Moments {
  double area2 = 0;
  Point moment6;
};

Moments moments(const Ring& ring, Point origin) {
  Moments sum;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i] - origin;
    const Point b = ring[(i + 1) % ring.size()] - origin;
    const double twice = cross(a, b);
    sum.area2 += twice;
    sum.moment6 = sum.moment6 + twice * (a + b);
  }
  return sum;
}

/// The centroid by area, islands taken out.
Point centre_of(const Region& region) {
  const Point origin = region.front().outer.front();
  Moments sum;
  const auto add = [&](const Ring& ring, double sign) {
    const Moments part = moments(ring, origin);
    if (part.area2 < 0) sign = -sign;
    sum.area2 += sign * part.area2;
    sum.moment6 = sum.moment6 + sign * part.moment6;
  };
  for (const Polygon& polygon : region) {
    add(polygon.outer, 1);
    for (const Ring& hole : polygon.holes) add(hole, -1);
  }
  return sum.area2 > 0 ? origin + (1 / (3 * sum.area2)) * sum.moment6 : origin;
}

/// Corners as far from the centre as this are equally far: beyond lie rounding errors of a turn.
constexpr double tie_cm = 1e-7;
/// How many corners on a tie is looked into.
constexpr std::size_t tie_depth = 64;

/// Whether corner i is the farther from a point than corner j; of equally far ones, the one that is
/// followed by a farther corner. So a shape that is its own mirror image has one farthest corner.
bool is_farther(const Ring& ring, std::size_t i, std::size_t j, Point from) {
  for (std::size_t k = 0; k < std::min(tie_depth, ring.size()); ++k) {
    const double a = distance(ring[(i + k) % ring.size()], from);
    const double b = distance(ring[(j + k) % ring.size()], from);
    if (std::abs(a - b) > tie_cm) return a > b;
  }
  return false;
}

std::size_t farthest(const Ring& ring, Point from) {
  std::size_t best = 0;
  for (std::size_t i = 1; i < ring.size(); ++i)
    if (is_farther(ring, i, best, from)) best = i;
  return best;
}

/// Drops repeated corners and those on the straight line between their neighbours (in either
/// direction, so zero-width spikes go as well): exactly, since the diagram takes no such corner.
std::vector<GridPoint> without_straight_corners(const std::vector<GridPoint>& ring) {
  std::vector<GridPoint> kept;
  const auto trim = [&] {
    while (kept.size() >= 2 && (kept.back() == kept[kept.size() - 2])) kept.pop_back();
    while (kept.size() >= 3 &&
           turn(kept[kept.size() - 3], kept[kept.size() - 2], kept.back()) == 0) {
      kept.erase(kept.end() - 2);
      if (kept[kept.size() - 2] == kept.back()) kept.pop_back();
    }
  };
  for (const GridPoint p : ring) {
    kept.push_back(p);
    trim();
  }
  // The seam: the same at the ring's two ends, until neither gives way.
  for (bool changed = true; changed && kept.size() >= 3;) {
    const std::size_t n = kept.size();
    changed = true;
    if (kept[0] == kept[n - 1] || turn(kept[n - 2], kept[n - 1], kept[0]) == 0)
      kept.pop_back();
    else if (turn(kept[n - 1], kept[0], kept[1]) == 0)
      kept.erase(kept.begin());
    else
      changed = false;
  }
  return kept;
}

bool counter_clockwise(const std::vector<GridPoint>& ring) {
  double area2 = 0;
  for (std::size_t i = 0; i < ring.size(); ++i)
    area2 += cross(real(ring[i]), real(ring[(i + 1) % ring.size()]));
  return area2 > 0;
}

class Layer {
 public:
  Layer(const Frame& frame, Point centre, double thinning_cm)
      : frame_(frame), centre_(centre), thinning_cm_(thinning_cm) {}

  void add(const Ring& ring, int polygon, bool is_hole) {
    if (ring.empty()) return;
    const Thinned thin = thinned(ring, farthest(ring, centre_), thinning_cm_);
    std::vector<GridPoint> corners = without_straight_corners(snapped(thin.ring));
    if (corners.size() < 3) {
      ++outline_.lost_rings;
      return;
    }
    // The region lies on the left: outer rings counter-clockwise, holes clockwise.
    if (counter_clockwise(corners) == is_hole) std::reverse(corners.begin(), corners.end());
    append(corners, polygon);
    stray_cm_ = std::max(stray_cm_, thin.stray);
  }

  Outline finish(int polygons) {
    outline_.polygons = polygons;
    // Snapping moves a corner by half a grid's diagonal at most; dropping what is straight, by
    // none.
    outline_.stray = stray_cm_ / tolerance::grid_cm + std::sqrt(0.5);
    return std::move(outline_);
  }

 private:
  std::vector<GridPoint> snapped(const Ring& ring) const {
    std::vector<GridPoint> points;
    points.reserve(ring.size());
    for (const Point p : ring) {
      const Point g = frame_.to_grid(p);
      points.push_back({static_cast<std::int32_t>(std::lround(g.x)),
                        static_cast<std::int32_t>(std::lround(g.y))});
    }
    return points;
  }

  void append(const std::vector<GridPoint>& corners, int polygon) {
    const int first = outline_.size();
    const int count = static_cast<int>(corners.size());
    for (int i = 0; i < count; ++i) {
      outline_.corners.push_back(corners[static_cast<std::size_t>(i)]);
      outline_.next.push_back(first + (i + 1) % count);
      outline_.previous.push_back(first + (i + count - 1) % count);
      outline_.polygon.push_back(polygon);
    }
  }

  const Frame& frame_;
  Point centre_;
  double thinning_cm_;
  double stray_cm_ = 0;
  Outline outline_;
};

}  // namespace

Frame::Frame(const Region& region, double turn_rad) : centre_(centre_of(region)) {
  Point far = centre_;
  for (const Polygon& polygon : region) {
    const Point p = polygon.outer[farthest(polygon.outer, centre_)];
    if (distance(p, centre_) > distance(far, centre_)) far = p;
  }
  const double reach = distance(far, centre_);
  const Point own = reach > 0 ? (1 / reach) * (far - centre_) : Point{1, 0};
  axis_ = {own.x * std::cos(turn_rad) - own.y * std::sin(turn_rad),
           own.x * std::sin(turn_rad) + own.y * std::cos(turn_rad)};
}

Point Frame::to_grid(Point p) const {
  const Point v = (1 / tolerance::grid_cm) * (p - centre_);
  return {dot(axis_, v), cross(axis_, v)};
}

Point Frame::from_grid(Point p) const {
  const Point v{axis_.x * p.x - axis_.y * p.y, axis_.y * p.x + axis_.x * p.y};
  return centre_ + tolerance::grid_cm * v;
}

Outline lay_on_grid(const Region& region, const Frame& frame, double thinning_cm) {
  Layer layer(frame, frame.from_grid({}), thinning_cm);
  for (std::size_t i = 0; i < region.size(); ++i) {
    layer.add(region[i].outer, static_cast<int>(i), false);
    for (const Ring& hole : region[i].holes) layer.add(hole, static_cast<int>(i), true);
  }
  return layer.finish(static_cast<int>(region.size()));
}

}  // namespace drapewright::geometry::medial
