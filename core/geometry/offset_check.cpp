#include "core/geometry/offset_check.h"

#include <algorithm>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/base/tolerances.h"
#include "core/geometry/circle.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

std::string at(Point p, const std::string& what) {
  return say("{1} at ({2}, {3})", {what, format_number(p.x, 2), format_number(p.y, 2)});
}

template <class Check>
std::string for_each_ring(const Region& region, Check check) {
  for (const Polygon& polygon : region) {
    if (std::string doubt = check(polygon.outer, 1); !doubt.empty()) return doubt;
    for (const Ring& hole : polygon.holes) {
      if (std::string doubt = check(hole, -1); !doubt.empty()) return doubt;
    }
  }
  return {};
}

std::string check_ring(const Ring& ring, int sense) {
  const bool finite = std::all_of(ring.begin(), ring.end(),
                                  [](Point p) { return std::isfinite(p.x) && std::isfinite(p.y); });
  if (ring.size() < 3 || !finite) return say("it has a ring without an area");
  if (!(sense * signed_area(ring) > 0)) return at(ring.front(), say("a ring runs the wrong way"));
  return {};
}

/// Edges may meet only at the corner that they share.
std::string check_simple(const EdgeTree& edges) {
  std::string doubt;
  edges.for_close_boxes(0, [&](std::size_t i, std::size_t j) {
    const Segment& a = edges.edges()[i];
    const Segment& b = edges.edges()[j];
    if (a.to == b.from || b.to == a.from) return true;
    const Segment way = shortest_between(a, b);
    if (distance(way.from, way.to) <= 0) doubt = at(way.from, say("its edge meets itself"));
    return doubt.empty();
  });
  return doubt;
}

/// Rings that do not meet are nested rightly when one point of each is.
std::string check_nesting(const Region& region) {
  for (const Polygon& polygon : region) {
    for (const Ring& hole : polygon.holes) {
      if (!contains(Polygon{polygon.outer, {}}, hole.front())) {
        return at(hole.front(), say("a hole lies outside its outline"));
      }
    }
    for (const Polygon& other : region) {
      if (&other != &polygon && contains(other, polygon.outer.front())) {
        return at(polygon.outer.front(), say("its parts overlap"));
      }
    }
  }
  return {};
}

/// No edge of the result nearer to the source's edge than the distance; and as no edge of it
/// crosses the source's, one point of each ring tells on which side the whole ring lies.
std::string check_safe_side(const OffsetTask& task, const Region& result, const EdgeTree& edges) {
  const double least = task.distance_cm - tolerance::collinear_cm;
  for (const Segment& edge : edges.edges()) {
    const auto near = task.source_edges.nearest(edge, least);
    if (near.squared < least * least) {
      const std::string nearness = format_number(std::sqrt(near.squared), 5);
      return at(near.on_edge, say("it comes as near as {1} cm", {nearness}));
    }
  }
  const bool inside = task.direction == Direction::inwards;
  return for_each_ring(result, [&](const Ring& ring, int) {
    const bool right = task.source_edges.inside(ring.front()) == inside;
    return right ? std::string() : at(ring.front(), say("a ring lies on the wrong side"));
  });
}

/// No corner of the result farther from the source's edge than allowed.
std::string check_corners(const OffsetTask& task, const EdgeTree& edges) {
  const double most = task.distance_cm + task.max_error_cm;
  for (const Segment& edge : edges.edges()) {
    const double squared = task.source_edges.nearest(edge.from).squared;
    if (squared > most * most) {
      const std::string far = format_number(std::sqrt(squared), 5);
      return at(edge.from, say("it strays as far as {1} cm", {far}));
    }
  }
  return {};
}

/// No point along its edges either. The distance to one edge of the source is convex along a
/// straight line: what holds at both ends of a stretch holds between them. Where the ends are near
/// to different edges the stretch is halved.
class StretchCheck {
 public:
  StretchCheck(const EdgeTree& source, double most_cm) : source_(source), most_cm_(most_cm) {}

  std::string check(const EdgeTree& edges) const {
    for (const Segment& edge : edges.edges()) {
      const End from{edge.from, source_.nearest(edge.from)};
      const End to{edge.to, source_.nearest(edge.to)};
      if (!is_near(from, to)) return at(0.5 * (edge.from + edge.to), say("an edge of it strays"));
    }
    return {};
  }

 private:
  struct End {
    Point p;
    EdgeTree::Nearest near;
  };
  bool near_to(std::size_t edge, Point p) const {
    return distance(p, nearest_on(source_.edges()[edge], p)) <= most_cm_;
  }
  bool is_near(const End& a, const End& b) const {
    if (a.near.squared > most_cm_ * most_cm_ || b.near.squared > most_cm_ * most_cm_) return false;
    if (near_to(a.near.edge, b.p) || near_to(b.near.edge, a.p)) return true;
    if (distance(a.p, b.p) <= tolerance::contact_cm) return true;
    const Point middle = 0.5 * (a.p + b.p);
    const End half{middle, source_.nearest(middle)};
    return is_near(a, half) && is_near(half, b);
  }
  const EdgeTree& source_;
  double most_cm_;
};

/// Places just beyond the offset curve, square to the edges of the shape and fanned round its
/// corners. Those that are indeed that far from all edges must belong to an inset, and must not to
/// an outset. This is what finds a lost or an invented piece, whose own edges would all be in
/// their right places.
class ProbeCheck {
 public:
  ProbeCheck(const OffsetTask& task, const EdgeTree& result)
      : task_(task), result_(result), inwards_(task.direction == Direction::inwards) {}

  std::string check(const Region& shape) {
    return for_each_ring(shape, [&](const Ring& ring, int) {
      for (std::size_t i = 0, n = ring.size(); i < n && wrong_.empty(); ++i) {
        const Segment edge{ring[i], ring[(i + 1) % n]};
        const Segment next{edge.to, ring[(i + 2) % n]};
        if (edge.from == edge.to || next.from == next.to) continue;
        probe_edge(edge);
        probe_corner(edge.to, square_to(edge), square_to(next));
      }
      return wrong_;
    });
  }

 private:
  /// Unit vector towards the offset curve. The shape lies to the left of its edges.
  Point square_to(const Segment& edge) const {
    const Point along = edge.to - edge.from;
    return ((inwards_ ? 1 : -1) / norm(along)) * Point{-along.y, along.x};
  }

  void probe_edge(const Segment& edge) {
    const double length = distance(edge.from, edge.to);
    const int parts = std::max(1, static_cast<int>(std::ceil(length / spacing_cm)));
    for (int i = 0; i < parts; ++i) {
      probe(edge.from + ((i + 0.5) / parts) * (edge.to - edge.from), square_to(edge));
    }
  }

  void probe_corner(Point corner, Point from, Point to) {
    const double turn = std::atan2(cross(from, to), dot(from, to));
    if (inwards_ ? turn >= 0 : turn <= 0) return;  // here the curve has a corner, not an arc
    const int parts = static_cast<int>(std::lround(std::abs(turn) * beyond() / spacing_cm));
    for (int i = 0; i < parts; ++i) {
      probe(corner, turned(from, degrees((i + 0.5) / parts * turn)));
    }
  }

  void probe(Point foot, Point direction) {
    const Point p = foot + beyond() * direction;
    if (task_.source_edges.comes_within(p, task_.distance_cm + task_.max_error_cm)) return;
    if (result_.inside(p) == inwards_ || task_.source_edges.inside(p) != inwards_) return;
    wrong_ = at(p, say("a piece is missing or too much"));
  }

  double beyond() const { return task_.distance_cm + 2 * task_.max_error_cm; }

  static constexpr double spacing_cm = 0.2;
  const OffsetTask& task_;
  const EdgeTree& result_;
  bool inwards_;
  std::string wrong_;
};

/// Bounds that hold for every shape. From below an outset, from above an inset: Brunn and
/// Minkowski, sqrt(A grown) >= sqrt(A) + sqrt(pi) d. The other way: an edge of length L sweeps no
/// more than L d, plus pi d2 for each ring that is offset away from its inside (Sz.-Nagy, Acta
/// Sci. Math. 1959, from memory).
std::string check_area(const OffsetTask& task, const Region& result) {
  const double before = area(task.source);
  const double after = area(result);
  const double edge = edge_length(task.source);
  const double most = task.distance_cm + task.max_error_cm;
  std::size_t holes = 0;
  for (const Polygon& polygon : task.source) holes += polygon.holes.size();
  const auto squared = [](double x) { return x * x; };
  double low = 0;
  double high = 0;
  if (task.direction == Direction::inwards) {
    low = before - edge * most - pi * most * most * static_cast<double>(holes);
    high = squared(std::max(0.0, std::sqrt(before) - std::sqrt(pi) * task.distance_cm));
  } else {
    low = squared(std::sqrt(before) + std::sqrt(pi) * task.distance_cm);
    high = before + edge * most + pi * most * most * static_cast<double>(task.source.size());
  }
  const double rounding = 1e-9 * (before + edge);
  if (after >= low - rounding && after <= high + rounding) return {};
  return say("its area of {1} cm2 is not between {2} and {3}",
             {format_number(after, 3), format_number(low, 3), format_number(high, 3)});
}

std::string check_empty(const OffsetTask& task) {
  if (task.direction == Direction::outwards) return say("nothing came out");
  const auto circle = largest_inscribed_circle(task.source);
  if (!circle || circle->radius_cm <= task.distance_cm + task.max_error_cm) return {};
  return at(circle->centre, say("nothing came out, but a circle fits"));
}

}  // namespace

std::string find_doubt(const OffsetTask& task, const StandIn& stand_in, const Region& result) {
  if (result.empty()) return check_empty(task);
  if (std::string doubt = for_each_ring(result, check_ring); !doubt.empty()) return doubt;
  const EdgeTree edges(edges_of(result));
  const EdgeTree stand_in_edges(edges_of(stand_in.region));
  std::string doubt = check_simple(edges);
  if (doubt.empty()) doubt = check_nesting(result);
  if (doubt.empty()) doubt = check_safe_side(task, result, edges);
  if (doubt.empty()) doubt = check_corners(task, edges);
  if (doubt.empty()) doubt = StretchCheck(stand_in_edges, stand_in.farthest_cm).check(edges);
  if (doubt.empty()) doubt = ProbeCheck(task, edges).check(stand_in.region);
  if (doubt.empty()) doubt = check_area(task, result);
  return doubt;
}

}  // namespace drapewright::geometry
