#include "core/geometry/distance.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>

#include "core/geometry/edge_tree.h"

namespace drapewright::geometry {
namespace {

/// Where a line `at` + share x `along` lies between 0 and `width`; nothing where it never does.
std::optional<Part> between(double at, double along, double width) {
  constexpr double inf = std::numeric_limits<double>::infinity();
  if (along == 0) return at >= 0 && at <= width ? std::optional(Part{-inf, inf}) : std::nullopt;
  const double zero = -at / along;
  const double other = (width - at) / along;
  return Part{std::min(zero, other), std::max(zero, other)};
}

std::optional<Part> in_circle(const Segment& line, Point centre, double radius) {
  const Point along = line.to - line.from;
  const double squared = dot(along, along);
  const Point off = line.from - centre;
  if (squared == 0) return norm(off) <= radius ? std::optional(Part{}) : std::nullopt;
  const double middle = -dot(off, along) / squared;
  const double away = cross(along, off) * cross(along, off) / squared;
  if (away > radius * radius) return std::nullopt;
  const double half = std::sqrt((radius * radius - away) / squared);
  return Part{middle - half, middle + half};
}

/// Beside the edge, between the lines at right angles through its ends.
std::optional<Part> beside(const Segment& line, const Segment& edge, double within_cm) {
  const Point along = line.to - line.from;
  const Point axis = edge.to - edge.from;
  const double length = norm(axis);
  const Point off = line.from - edge.from;
  const auto lengthwise = between(dot(axis, off), dot(axis, along), length * length);
  const auto across =
      between(cross(axis, off) + within_cm * length, cross(axis, along), 2 * within_cm * length);
  if (length == 0 || !lengthwise || !across) return std::nullopt;
  const Part both{std::max(lengthwise->from, across->from), std::min(lengthwise->to, across->to)};
  return both.from <= both.to ? std::optional(both) : std::nullopt;
}

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

std::optional<Part> part_within(const Segment& segment, const Segment& edge, double within_cm) {
  std::optional<Part> whole;
  for (const auto& part :
       {in_circle(segment, edge.from, within_cm), in_circle(segment, edge.to, within_cm),
        beside(segment, edge, within_cm)}) {
    if (!part) continue;
    whole = whole ? Part{std::min(whole->from, part->from), std::max(whole->to, part->to)} : *part;
  }
  if (!whole || whole->from > 1 || whole->to < 0) return std::nullopt;
  return Part{std::max(whole->from, 0.0), std::min(whole->to, 1.0)};
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

std::optional<Gap> EdgeIndex::gap_to(const Segment& segment, double below_cm) const {
  const EdgeTree::Nearest hit = impl_->tree.nearest(segment, below_cm);
  if (hit.squared >= below_cm * below_cm) return std::nullopt;
  const Segment way = shortest_between(segment, impl_->tree.edges()[hit.edge]);
  return Gap{norm(way.to - way.from), way};
}

std::vector<Part> EdgeIndex::parts_within(const Segment& segment, double within_cm) const {
  std::vector<Part> parts;
  const Box box = box_of(segment);
  for (const Segment& edge : impl_->tree.edges()) {
    if (!close(box, box_of(edge), within_cm)) continue;
    if (const auto part = part_within(segment, edge, within_cm)) parts.push_back(*part);
  }
  std::ranges::sort(parts, {}, &Part::from);
  std::vector<Part> joined;
  for (const Part& part : parts) {
    if (joined.empty() || part.from > joined.back().to) {
      joined.push_back(part);
    } else {
      joined.back().to = std::max(joined.back().to, part.to);
    }
  }
  return joined;
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
