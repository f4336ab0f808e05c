#include "core/geometry/medial/narrow_places.h"

#include <algorithm>
#include <cmath>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"
#include "core/geometry/medial/arms.h"
#include "core/geometry/overlay.h"

namespace drapewright::geometry::medial {
namespace {

/// How many places are looked at along a half-edge for the widest one.
constexpr int looks = 16;

/// Feet of a vertex on the sites between two half-edges that leave it, going clockwise.
std::vector<Point> feet_between(const Diagram& diagram, int from, int to) {
  const Point v = diagram.vertex(diagram.from(from)).at;
  std::vector<Point> feet;
  int e = from;
  do {
    feet.push_back(diagram.foot(diagram.site(e ^ 1), v));
    e = diagram.next(e ^ 1);
  } while (e != to);
  return feet;
}

bool holds(const Ring& ring, Point p) {
  bool inside = false;
  for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
    const Point a = ring[i];
    const Point b = ring[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x))
      inside = !inside;
  }
  return inside;
}

bool all_within(const Ring& ring, Point centre, double radius) {
  return std::all_of(ring.begin(), ring.end(),
                     [&](Point p) { return distance(p, centre) <= radius; });
}

/// Narrow parts that belong together: one boundary and those of what it goes round.
struct Cluster {
  std::vector<const Narrow*> parts;
  double area = 0;
};

std::vector<Cluster> clusters(const std::vector<Narrow>& parts, double reach) {
  std::vector<Cluster> result;
  const auto served = [&](const Narrow& part) {
    return std::any_of(part.mouths.begin(), part.mouths.end(),
                       [&](Point mouth) { return all_within(part.ring, mouth, reach); });
  };
  std::vector<const Narrow*> inner;
  for (const Narrow& part : parts) {
    const double area = signed_area(part.ring);
    if (area < 0) inner.push_back(&part);
    if (area > 0 && !served(part)) result.push_back({{&part}, area});
  }
  for (const Narrow* part : inner) {
    Cluster* around = nullptr;
    for (Cluster& cluster : result)
      if (holds(cluster.parts.front()->ring, part->ring.front()) &&
          (around == nullptr || cluster.area < around->area))
        around = &cluster;
    if (around != nullptr) around->parts.push_back(part);
  }
  return result;
}

Ring in_drawing(const Frame& frame, const Ring& ring) {
  Ring result;
  result.reserve(ring.size());
  for (const Point p : ring) result.push_back(frame.from_grid(p));
  return result;
}

/// A polygon inside a disc, so that no more is cut away than the disc covers.
Ring inside_disc(Point centre, double radius, double step_rad) {
  const int corners = std::max(8, static_cast<int>(std::ceil(2 * pi / step_rad)));
  Ring ring;
  for (int i = 0; i < corners; ++i) {
    const double at = 2 * pi * i / corners;
    ring.push_back(centre + radius * Point{std::cos(at), std::sin(at)});
  }
  return ring;
}

/// What the discs around a cluster's mouths leave of it.
Region left_over(const Cluster& cluster, const Frame& frame, double reach_cm, double step_rad) {
  Polygon whole;
  Region discs;
  for (const Narrow* part : cluster.parts) {
    Ring ring = in_drawing(frame, part->ring);
    if (whole.outer.empty())
      whole.outer = std::move(ring);
    else
      whole.holes.push_back(std::move(ring));
    for (const Point mouth : part->mouths)
      discs.push_back({inside_disc(frame.from_grid(mouth), reach_cm, step_rad), {}});
  }
  return subtract({whole}, discs);
}

/// The largest clearance on the medial axis inside an arm.
void find_widest(const Diagram& diagram, const Frame& frame, const Cluster& cluster, double level,
                 Arm& arm) {
  const Polygon& polygon = arm.region.front();
  const auto look = [&](Point at, double clearance) {
    const double width = 2 * clearance * tolerance::grid_cm;
    if (width <= arm.width_cm) return;
    const Point p = frame.from_grid(at);
    if (!holds(polygon.outer, p)) return;
    for (const Ring& hole : polygon.holes)
      if (holds(hole, p)) return;
    arm.width_cm = width;
    arm.widest_at = p;
  };
  for (const Narrow* part : cluster.parts)
    for (const int e : part->ways) {
      const double a = std::min(level, diagram.vertex(diagram.from(e)).clearance);
      const double b = std::min(level, diagram.vertex(diagram.to(e)).clearance);
      for (int i = 0; i <= looks; ++i) {
        const double clearance = a + (b - a) * i / looks;
        look(diagram.at_clearance(e, clearance), clearance);
      }
    }
}

}  // namespace

Segment across(const Diagram& diagram, const Saddle& saddle) {
  const std::vector<Point> left = feet_between(diagram, saddle.toward[0], saddle.toward[1]);
  const std::vector<Point> right = feet_between(diagram, saddle.toward[1], saddle.toward[0]);
  Segment best{left.front(), right.front()};
  for (const Point a : left)
    for (const Point b : right)
      if (distance(a, b) < distance(best.from, best.to)) best = {a, b};
  return best;
}

std::vector<Arm> unreached_arms(const Diagram& diagram, const Frame& frame, const Level& level,
                                double reach_cm) {
  std::vector<Arm> arms;
  const std::vector<Narrow> parts = narrow_parts(diagram, level.clearance);
  for (const Cluster& cluster : clusters(parts, reach_cm / tolerance::grid_cm)) {
    for (Polygon& polygon : left_over(cluster, frame, reach_cm, level.step_rad)) {
      Arm arm;
      arm.area_cm2 = area(polygon);
      arm.widest_at = polygon.outer.front();
      arm.region.push_back(std::move(polygon));
      find_widest(diagram, frame, cluster, level.clearance, arm);
      arms.push_back(std::move(arm));
    }
  }
  return arms;
}

}  // namespace drapewright::geometry::medial
