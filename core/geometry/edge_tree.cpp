#include "core/geometry/edge_tree.h"

#include <algorithm>
#include <bit>
#include <cmath>

#include "core/geometry/distance.h"

namespace drapewright::geometry {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr Box nothing{{infinity, infinity}, {-infinity, -infinity}};
constexpr std::size_t deepest = 64;  // a tree's depth cannot exceed the bits of its index

void grow(Box& box, const Box& by) {
  box.low = {std::min(box.low.x, by.low.x), std::min(box.low.y, by.low.y)};
  box.high = {std::max(box.high.x, by.high.x), std::max(box.high.y, by.high.y)};
}

double squared(Point v) { return dot(v, v); }

bool cross_each_other(const Segment& a, const Segment& b) {
  const Point u = a.to - a.from;
  const Point v = b.to - b.from;
  return cross(u, b.from - a.from) * cross(u, b.to - a.from) < 0 &&
         cross(v, a.from - b.from) * cross(v, a.to - b.from) < 0;
}

void append_edges(const Ring& ring, std::vector<Segment>& edges) {
  const std::size_t before = edges.size();
  for (std::size_t i = 0, n = ring.size(); i < n; ++i) {
    const Point next = ring[i + 1 < n ? i + 1 : 0];
    if (ring[i] != next) edges.push_back({ring[i], next});
  }
  if (edges.size() == before && !ring.empty()) edges.push_back({ring[0], ring[0]});
}

void append_edges(const Polygon& polygon, std::vector<Segment>& edges) {
  append_edges(polygon.outer, edges);
  for (const Ring& hole : polygon.holes) append_edges(hole, edges);
}

}  // namespace

EdgeTree::EdgeTree(std::vector<Segment> edges) : edges_(std::move(edges)) {
  const std::size_t leaves = std::bit_ceil((edges_.size() + run_length - 1) / run_length);
  boxes_.assign(2 * leaves, nothing);
  for (std::size_t i = 0; i < edges_.size(); ++i) {
    grow(boxes_[leaves + i / run_length], box_of(edges_[i]));
  }
  for (std::size_t node = leaves - 1; node >= 1; --node) {
    grow(boxes_[node], boxes_[2 * node]);
    grow(boxes_[node], boxes_[2 * node + 1]);
  }
}

std::pair<std::size_t, std::size_t> EdgeTree::run(std::size_t leaf) const {
  const std::size_t begin = (leaf - leaf_count()) * run_length;
  return {std::min(begin, edges_.size()), std::min(begin + run_length, edges_.size())};
}

EdgeTree::Nearest EdgeTree::nearest(Point p) const {
  Nearest best;
  std::array<std::pair<double, std::size_t>, deepest> open;
  std::size_t count = 0;
  open[count++] = {0, 1};
  while (count > 0) {
    const auto [apart, node] = open[--count];
    if (apart >= best.squared) continue;
    if (is_leaf(node)) {
      const auto [begin, end] = run(node);
      for (std::size_t i = begin; i < end; ++i) {
        const Point on_edge = nearest_on(edges_[i], p);
        const double candidate = squared(p - on_edge);
        if (candidate < best.squared) best = {candidate, i, on_edge};
      }
      continue;
    }
    const double left = squared_distance(boxes_[2 * node], p);
    const double right = squared_distance(boxes_[2 * node + 1], p);
    const bool left_first = left <= right;
    open[count++] = left_first ? std::pair{right, 2 * node + 1} : std::pair{left, 2 * node};
    open[count++] = left_first ? std::pair{left, 2 * node} : std::pair{right, 2 * node + 1};
  }
  return best;
}

bool EdgeTree::comes_within(Point p, double within_cm) const {
  const double bound = within_cm * within_cm;
  std::array<std::size_t, deepest> open;
  std::size_t count = 0;
  if (!empty()) open[count++] = 1;
  while (count > 0) {
    const std::size_t node = open[--count];
    if (is_leaf(node)) {
      const auto [begin, end] = run(node);
      for (std::size_t i = begin; i < end; ++i) {
        if (squared(p - nearest_on(edges_[i], p)) <= bound) return true;
      }
      continue;
    }
    const double left = squared_distance(boxes_[2 * node], p);
    const double right = squared_distance(boxes_[2 * node + 1], p);
    const std::size_t nearer = left <= right ? 2 * node : 2 * node + 1;
    if (std::max(left, right) <= bound) open[count++] = 4 * node + 1 - nearer;
    if (std::min(left, right) <= bound) open[count++] = nearer;
  }
  return false;
}

EdgeTree::Nearest EdgeTree::nearest(const Segment& segment, double below_cm) const {
  Nearest best{below_cm * below_cm, 0, {}};
  const Box box = box_of(segment);
  std::array<std::size_t, deepest> open;
  std::size_t count = 0;
  if (!empty()) open[count++] = 1;
  while (count > 0) {
    const std::size_t node = open[--count];
    if (squared_distance(boxes_[node], box) >= best.squared) continue;
    if (!is_leaf(node)) {
      open[count++] = 2 * node;
      open[count++] = 2 * node + 1;
      continue;
    }
    const auto [begin, end] = run(node);
    for (std::size_t i = begin; i < end; ++i) {
      if (squared_distance(box_of(edges_[i]), box) >= best.squared) continue;
      const Segment way = shortest_between(segment, edges_[i]);
      const double candidate = squared(way.to - way.from);
      if (candidate < best.squared) best = {candidate, i, way.to};
    }
  }
  return best;
}

bool EdgeTree::inside(Point p) const {
  bool odd = false;
  std::array<std::size_t, deepest> open;
  std::size_t count = 0;
  if (!empty()) open[count++] = 1;
  while (count > 0) {
    const std::size_t node = open[--count];
    const Box& box = boxes_[node];
    if (p.y < box.low.y || p.y > box.high.y || p.x > box.high.x) continue;
    if (!is_leaf(node)) {
      open[count++] = 2 * node;
      open[count++] = 2 * node + 1;
      continue;
    }
    const auto [begin, end] = run(node);
    for (std::size_t i = begin; i < end; ++i) {
      const Segment& s = edges_[i];
      if ((s.from.y > p.y) == (s.to.y > p.y)) continue;
      const bool to_the_left = cross(s.to - s.from, p - s.from) > 0;
      if (to_the_left == (s.to.y > s.from.y)) odd = !odd;
    }
  }
  return odd;
}

Box box_of(const Segment& s) {
  return {{std::min(s.from.x, s.to.x), std::min(s.from.y, s.to.y)},
          {std::max(s.from.x, s.to.x), std::max(s.from.y, s.to.y)}};
}

double squared_distance(const Box& box, Point p) {
  const double x = std::max({box.low.x - p.x, 0.0, p.x - box.high.x});
  const double y = std::max({box.low.y - p.y, 0.0, p.y - box.high.y});
  return x * x + y * y;
}

double squared_distance(const Box& a, const Box& b) {
  const double x = std::max({a.low.x - b.high.x, 0.0, b.low.x - a.high.x});
  const double y = std::max({a.low.y - b.high.y, 0.0, b.low.y - a.high.y});
  return x * x + y * y;
}

Segment shortest_between(const Segment& a, const Segment& b) {
  if (cross_each_other(a, b)) {
    const Point u = a.to - a.from;
    const Point v = b.to - b.from;
    const Point meeting = a.from + (cross(b.from - a.from, v) / cross(u, v)) * u;
    return {meeting, meeting};
  }
  // Two segments that do not cross are nearest at an end of one of them.
  Segment best{a.from, nearest_on(b, a.from)};
  const auto keep_shorter = [&](Point from, Point to) {
    if (squared(to - from) < squared(best.to - best.from)) best = {from, to};
  };
  keep_shorter(a.to, nearest_on(b, a.to));
  keep_shorter(nearest_on(a, b.from), b.from);
  keep_shorter(nearest_on(a, b.to), b.to);
  return best;
}

std::vector<Segment> edges_of(const Ring& ring) {
  std::vector<Segment> edges;
  append_edges(ring, edges);
  return edges;
}
std::vector<Segment> edges_of(const Polygon& polygon) {
  std::vector<Segment> edges;
  append_edges(polygon, edges);
  return edges;
}
std::vector<Segment> edges_of(const Region& region) {
  std::vector<Segment> edges;
  for (const Polygon& polygon : region) append_edges(polygon, edges);
  return edges;
}

}  // namespace drapewright::geometry
