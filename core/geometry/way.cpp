#include "core/geometry/way.h"

#include <algorithm>
#include <cmath>
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

class VisibilityGraph {
 public:
  VisibilityGraph(const Region& from, const Region& to, const Region& obstacles, double sample_cm)
      : obstacles_(obstacles),
        edges_(edges_of(obstacles)),
        from_(edges_of(from)),
        to_(edges_of(to)) {
    std::vector<Point> corners;
    for (const Polygon& polygon : obstacles) {
      add_corners(polygon.outer, corners);
      for (const Ring& hole : polygon.holes) add_corners(hole, corners);
    }
    for (const Point& corner : corners) {
      if (barred(corner)) continue;
      add(corner, Role::corner);
      add(from_.nearest(corner).on_edge, Role::start);
      add(to_.nearest(corner).on_edge, Role::goal);
    }
    add_samples(from_, Role::start, sample_cm);
    add_samples(to_, Role::goal, sample_cm);
    const Gap gap = gap_between_edges(from, to);
    add(gap.shortest.from, Role::start);
    add(gap.shortest.to, Role::goal);
  }

  /// Dijkstra's algorithm; whether two nodes see each other is only asked when it would matter.
  std::optional<Way> shortest() {
    using Entry = std::pair<double, std::size_t>;
    std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
    for (std::size_t i = 0; i < nodes_.size(); ++i) {
      if (nodes_[i].role != Role::start) continue;
      nodes_[i].way_cm = 0;
      open.push({0, i});
    }
    while (!open.empty()) {
      const auto [way_cm, here] = open.top();
      open.pop();
      if (way_cm > nodes_[here].way_cm) continue;
      if (nodes_[here].role == Role::goal) return way_to(here);
      for (std::size_t there = 0; there < nodes_.size(); ++there) {
        if (nodes_[there].role == Role::start) continue;
        const double longer = way_cm + distance(nodes_[here].at, nodes_[there].at);
        if (longer >= nodes_[there].way_cm || !see(nodes_[here].at, nodes_[there].at)) continue;
        nodes_[there].way_cm = longer;
        nodes_[there].before = here;
        open.push({longer, there});
      }
    }
    return std::nullopt;
  }

 private:
  enum class Role { start, corner, goal };
  struct Node {
    Point at;
    Role role;
    double way_cm = std::numeric_limits<double>::infinity();
    std::size_t before = 0;
  };

  bool barred(Point p) const { return !edges_.empty() && contains(obstacles_, p); }

  void add(Point at, Role role) {
    if (role == Role::corner || !barred(at)) nodes_.push_back({at, role});
  }

  void add_samples(const EdgeTree& edges, Role role, double sample_cm) {
    for (const Segment& edge : edges.edges()) {
      const int steps = static_cast<int>(std::ceil(distance(edge.from, edge.to) / sample_cm));
      for (int i = 0; i < steps; ++i) {
        add(edge.from + (static_cast<double>(i) / steps) * (edge.to - edge.from), role);
      }
    }
  }

  bool see(Point a, Point b) const {
    if (edges_.empty()) return true;
    constexpr double touching = tolerance::contact_cm / 2;
    return edges_.nearest(Segment{a, b}, touching).squared >= touching * touching;
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
  EdgeTree edges_, from_, to_;
  std::vector<Node> nodes_;
};

}  // namespace

std::optional<Way> shortest_way(const Region& from, const Region& to, const Region& obstacles,
                                double sample_cm) {
  if (from.empty() || to.empty()) {
    throw std::invalid_argument("a way needs a start and a goal");
  }
  if (!(sample_cm > 0) || !std::isfinite(sample_cm)) {
    throw std::invalid_argument("the spacing of samples must be positive and finite");
  }
  return VisibilityGraph(from, to, obstacles, sample_cm).shortest();
}

}  // namespace drapewright::geometry
