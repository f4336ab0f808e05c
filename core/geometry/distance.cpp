#include "core/geometry/distance.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "core/geometry/edge_tree.h"

namespace drapewright::geometry {
namespace {

enum class Where { outside, edge, inside };

Where locate(const Ring& ring, Point p) {
  bool odd = false;
  for (std::size_t i = 0, n = ring.size(); i < n; ++i) {
    const Segment s{ring[i], ring[i + 1 < n ? i + 1 : 0]};
    const double side = cross(s.to - s.from, p - s.from);
    if (side == 0 && dot(p - s.from, p - s.to) <= 0) return Where::edge;
    if ((s.from.y > p.y) != (s.to.y > p.y) && (side > 0) == (s.to.y > s.from.y)) odd = !odd;
  }
  return odd ? Where::inside : Where::outside;
}

}  // namespace

Point nearest_on(const Segment& segment, Point p) {
  const Point along = segment.to - segment.from;
  const double squared = dot(along, along);
  if (squared <= 0) return segment.from;
  const double t = dot(p - segment.from, along) / squared;
  if (t <= 0) return segment.from;
  if (t >= 1) return segment.to;
  return segment.from + t * along;
}

bool contains(const Polygon& polygon, Point p) {
  return locate(polygon.outer, p) != Where::outside &&
         std::none_of(polygon.holes.begin(), polygon.holes.end(),
                      [&](const Ring& hole) { return locate(hole, p) == Where::inside; });
}

bool contains(const Region& region, Point p) {
  return std::any_of(region.begin(), region.end(),
                     [&](const Polygon& polygon) { return contains(polygon, p); });
}

double gap_between(const Box& a, const Box& b) { return std::sqrt(squared_distance(a, b)); }

struct EdgeIndex::Impl {
  EdgeTree tree;
};

EdgeIndex::EdgeIndex(const Region& region) : EdgeIndex(edges_of(region)) {}
EdgeIndex::EdgeIndex(const std::vector<Segment>& edges)
    : impl_(std::make_unique<Impl>(Impl{EdgeTree(edges)})) {}
EdgeIndex::~EdgeIndex() = default;
EdgeIndex::EdgeIndex(EdgeIndex&&) noexcept = default;
EdgeIndex& EdgeIndex::operator=(EdgeIndex&&) noexcept = default;

EdgeIndex::Hit EdgeIndex::nearest(Point p) const {
  if (empty()) throw std::logic_error("no edge to measure a distance to");
  const EdgeTree::Nearest hit = impl_->tree.nearest(p);
  return {std::sqrt(hit.squared), hit.on_edge};
}

bool EdgeIndex::empty() const { return impl_->tree.empty(); }

Gap gap_between_edges(const Region& a, const Region& b) {
  const EdgeTree from(edges_of(a));
  const EdgeTree to(edges_of(b));
  if (from.empty() || to.empty()) throw std::invalid_argument("no edges to measure a gap between");
  Gap gap;
  double bound = std::numeric_limits<double>::infinity();
  from.for_near_pairs(to, [&](std::size_t i, std::size_t j) {
    const Segment way = shortest_between(from.edges()[i], to.edges()[j]);
    const Point along = way.to - way.from;
    if (dot(along, along) < bound) {
      bound = dot(along, along);
      gap = {std::sqrt(bound), way};
    }
    return bound;
  });
  return gap;
}

}  // namespace drapewright::geometry
