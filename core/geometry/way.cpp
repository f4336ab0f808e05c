#include "core/geometry/way.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <queue>
#include <stdexcept>
#include <utility>

#include "core/base/tolerances.h"
#include "core/geometry/distance.h"
#include "core/geometry/edge_tree.h"

namespace drapewright::geometry {
namespace {

/// How far a corner of the graph stands off its obstacle, so that a way round it does not count as
/// touching.
constexpr double stand_off_cm = 2 * tolerance::contact_cm;

/// Corner points of a ring pushed off the ring along the corner's bisector, to the side where
/// there is no obstacle. Corners that point away from that side are no use to a shortest way.
void add_corners(const Ring& ring, std::vector<Point>& corners) {
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point at = ring[i];
    const Point before = at - ring[(i + ring.size() - 1) % ring.size()];
    const Point after = ring[(i + 1) % ring.size()] - at;
    const double lengths = norm(before) * norm(after);
    if (lengths == 0 || cross(before, after) <= 0) continue;  // hollow, or straight on
    const Point bisector = (1 / norm(before)) * before - (1 / norm(after)) * after;
    const double size = norm(bisector);
    if (size == 0) continue;
    corners.push_back(at + (stand_off_cm / size) * bisector);
  }
}

/// Ways that come no nearer than this to an obstacle's edge do not touch it.
constexpr double touching_cm = tolerance::contact_cm / 2;

bool touches(const EdgeTree& obstacle, Point a, Point b) {
  if (obstacle.empty()) return false;
  return obstacle.nearest(Segment{a, b}, touching_cm).squared < touching_cm * touching_cm;
}

class VisibilityGraph {
 public:
  VisibilityGraph(const EdgeTree& from, const EdgeTree& to, const Region& obstacles,
                  double sample_cm)
      : obstacles_(obstacles), edges_(edges_of(obstacles)), to_(to) {
    std::vector<Point> corners;
    for (const Polygon& polygon : obstacles) {
      add_corners(polygon.outer, corners);
      for (const Ring& hole : polygon.holes) add_corners(hole, corners);
    }
    for (const Point& corner : corners) {
      if (contains(obstacles_, corner)) continue;
      add(corner, Role::corner);
      add(from.nearest(corner).on_edge, Role::start);
      add(to.nearest(corner).on_edge, Role::goal);
    }
    add_samples(from, Role::start, sample_cm);
    add_samples(to, Role::goal, sample_cm);
  }

  /// A* with the straight way to the goal's edge as what is left at least. Whether two nodes see
  /// each other is only asked when it would matter.
  std::optional<Way> shortest() {
    using Entry = std::pair<double, std::size_t>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      if (nodes_[i].role != Role::start) continue;
      nodes_[i].way_cm = 0;
      open.push({nodes_[i].rest_cm, i});
    }
    double best_cm = std::numeric_limits<double>::infinity();  // of a goal that was reached
    while (!open.empty()) {
      const auto [whole_cm, here] = open.top();
      open.pop();
      if (nodes_[here].done) continue;
      nodes_[here].done = true;
      if (nodes_[here].role == Role::goal) return way_to(here);
      for (std::size_t there = 0; there < nodes_.size(); ++there) {
        Node& node = nodes_[there];
        if (node.role == Role::start || node.done) continue;
        const double way_cm = nodes_[here].way_cm + distance(nodes_[here].at, node.at);
        if (way_cm >= node.way_cm || way_cm + node.rest_cm >= best_cm) continue;
        if (touches(edges_, nodes_[here].at, node.at)) continue;
        node.way_cm = way_cm;
        node.before = here;
        if (node.role == Role::goal) best_cm = way_cm;
        open.push({way_cm + node.rest_cm, there});
      }
    }
    return std::nullopt;
  }

 private:
  enum class Role { start, corner, goal };
  struct Node {
    Point at;
    Role role;
    double rest_cm;  ///< to the goal, at least
    double way_cm = std::numeric_limits<double>::infinity();
    std::size_t before = 0;
    bool done = false;
  };

  void add(Point at, Role role) {
    if (role != Role::corner && contains(obstacles_, at)) return;
    const double rest_cm = role == Role::goal ? 0 : std::sqrt(to_.nearest(at).squared);
    nodes_.push_back({at, role, rest_cm});
  }

  void add_samples(const EdgeTree& edges, Role role, double sample_cm) {
    for (const Segment& edge : edges.edges()) {
      const int steps = static_cast<int>(std::ceil(distance(edge.from, edge.to) / sample_cm));
      for (int i = 0; i < steps; ++i) {
        add(edge.from + (static_cast<double>(i) / steps) * (edge.to - edge.from), role);
      }
    }
  }

  Way way_to(std::size_t goal) const {
    Way way;
    way.length_cm = nodes_[goal].way_cm;
    for (std::size_t at = goal;; at = nodes_[at].before) {
      way.points.push_back(nodes_[at].at);
      if (nodes_[at].role == Role::start) break;
    }
    std::ranges::reverse(way.points);
    if (way.length_cm == 0) way.points.resize(1);
    return way;
  }

  const Region& obstacles_;
  EdgeTree edges_;
  const EdgeTree& to_;
  std::vector<Node> nodes_;
};

Way straight_way(const Region& from, const Region& to) {
  const Gap gap = gap_between_edges(from, to);
  if (gap.distance_cm == 0) return {{gap.shortest.from}, 0};
  return {{gap.shortest.from, gap.shortest.to}, gap.distance_cm};
}

bool meets(const Way& way, const Polygon& obstacle) {
  const Box box = bounding_box(obstacle.outer);
  if (gap_between(bounding_box(way.points), box) > touching_cm) return false;
  if (contains(obstacle, way.points.front())) return true;
  const EdgeTree edges(edges_of(obstacle));
  for (std::size_t i = 1; i < way.points.size(); ++i) {
    if (touches(edges, way.points[i - 1], way.points[i])) return true;
  }
  return false;
}

/// Moves the obstacles that the way meets from `rest` to `met`. @returns whether there were any
bool collect_met(const Way& way, Region& rest, Region& met) {
  const auto kept = std::stable_partition(
      rest.begin(), rest.end(), [&](const Polygon& obstacle) { return !meets(way, obstacle); });
  if (kept == rest.end()) return false;
  std::move(kept, rest.end(), std::back_inserter(met));
  rest.erase(kept, rest.end());
  return true;
}

}  // namespace

std::optional<Way> shortest_way(const Region& from, const Region& to, const Region& obstacles,
                                double sample_cm) {
  if (from.empty() || to.empty()) {
    throw std::invalid_argument("a way needs a start and a goal");
  }
  if (!(sample_cm > 0) || !std::isfinite(sample_cm)) {
    throw std::invalid_argument("the spacing of samples must be positive and finite");
  }
  // The shortest way round some of the obstacles that meets none of the others is the shortest
  // round all of them: so only those that stand in the way are ever looked at closely.
  std::optional<Way> way = straight_way(from, to);
  Region rest = obstacles;
  Region met;
  const EdgeTree start(edges_of(from));
  const EdgeTree goal(edges_of(to));
  while (way && collect_met(*way, rest, met)) {
    way = VisibilityGraph(start, goal, met, sample_cm).shortest();
  }
  return way;
}

}  // namespace drapewright::geometry
