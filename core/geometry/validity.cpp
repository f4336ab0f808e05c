#include "core/geometry/validity.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/base/tolerances.h"
#include "core/geometry/distance.h"
#include "core/geometry/edge_tree.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/ring_mending.h"
#include "core/geometry/winding.h"

namespace drapewright::geometry {
namespace {

bool is_finite(Point p) { return std::isfinite(p.x) && std::isfinite(p.y); }

std::optional<ShapeFault> find_bad_number(const Ring& ring) {
  const auto bad = std::find_if_not(ring.begin(), ring.end(), is_finite);
  if (bad == ring.end()) return std::nullopt;
  const auto number = static_cast<int>(bad - ring.begin()) + 1;
  return ShapeFault{say("corner point {1} has no finite coordinates", {number}),
                    say("finite numbers"), bad == ring.begin() ? Point{} : *(bad - 1)};
}

bool has_three_distinct(const Ring& ring) {
  const auto differs = [](Point a, Point b) { return distance(a, b) > tolerance::same_point_cm; };
  const auto second =
      std::find_if(ring.begin(), ring.end(), [&](Point p) { return differs(p, ring.front()); });
  return std::any_of(second, ring.end(),
                     [&](Point p) { return differs(p, ring.front()) && differs(p, *second); });
}

std::optional<ShapeFault> find_excess(const Ring& ring, double max_extent_cm) {
  const Segment longest = greatest_length(ring);
  const double extent = distance(longest.from, longest.to);
  if (extent <= max_extent_cm) return std::nullopt;
  return ShapeFault{say("it is {1} cm across", {format_short(extent, 1)}),
                    say("at most {1} cm", {format_short(max_extent_cm, 1)}), longest.to};
}

Point between(const Segment& way) { return 0.5 * (way.from + way.to); }

/// Where edges that do not follow each other meet, or come as near as the grid can tell apart.
std::vector<Point> contacts(const EdgeTree& edges, std::size_t at_most) {
  std::vector<Point> found;
  edges.for_close_boxes(tolerance::grid_cm, [&](std::size_t i, std::size_t j) {
    const Segment& a = edges.edges()[i];
    const Segment& b = edges.edges()[j];
    if (a.to == b.from || b.to == a.from) return true;  // a corner; its spikes are mended before
    const Segment way = shortest_between(a, b);
    if (distance(way.from, way.to) <= tolerance::grid_cm) found.push_back(between(way));
    return found.size() < at_most;
  });
  return found;
}

std::vector<Point> contacts(const EdgeTree& a, const EdgeTree& b, std::size_t at_most) {
  std::vector<Point> found;
  a.for_close_boxes(b, tolerance::grid_cm, [&](std::size_t i, std::size_t j) {
    const Segment way = shortest_between(a.edges()[i], b.edges()[j]);
    if (distance(way.from, way.to) <= tolerance::grid_cm) found.push_back(between(way));
    return found.size() < at_most;
  });
  return found;
}

/// The contact nearest to the largest part of what is wrong: that is where it begins.
Point place_of(const Region& wrong, const std::vector<Point>& contacts) {
  const auto largest =
      std::max_element(wrong.begin(), wrong.end(),
                       [](const Polygon& a, const Polygon& b) { return area(a) < area(b); });
  if (contacts.empty()) return largest->outer.front();
  const EdgeIndex edge(Region{*largest});
  return *std::min_element(contacts.begin(), contacts.end(), [&](Point a, Point b) {
    return edge.nearest(a).distance_cm < edge.nearest(b).distance_cm;
  });
}

/// A ring that meets itself more often than this (and thrice its corners) is a tangle.
constexpr std::size_t tangle = 1000;

std::optional<ShapeFault> find_crossing(const Ring& ring) {
  const Ring outline = mended(ring).ring;
  const std::size_t most = tangle + 3 * outline.size();
  const auto meetings = contacts(EdgeTree(edges_of(outline)), most);
  if (meetings.empty()) return std::nullopt;
  const ShapeFault fault{say("the edge crosses itself"), say("an edge that does not cross itself"),
                         meetings.front()};
  if (meetings.size() >= most) return fault;
  const Region wrong = wrongly_wound(outline);
  if (wrong.empty()) return std::nullopt;  // it only touches itself
  return ShapeFault{fault.problem, fault.expected, place_of(wrong, meetings)};
}

std::optional<ShapeFault> find_misplaced(const Ring& outline, const Ring& island) {
  const auto meetings = contacts(EdgeTree(edges_of(outline)), EdgeTree(edges_of(island)), tangle);
  const Polygon whole{outline, {}};
  if (meetings.empty()) {
    if (contains(whole, island.front())) return std::nullopt;
    return ShapeFault{say("an island lies outside the outline"), say("islands inside the outline"),
                      island.front()};
  }
  const Region outside = subtract({{island, {}}}, {whole});
  if (outside.empty()) return std::nullopt;
  return ShapeFault{say("an island crosses the outline"), say("islands inside the outline"),
                    place_of(outside, meetings)};
}

std::optional<ShapeFault> find_overlap(const Ring& a, const Ring& b) {
  const Region shared = intersect({{a, {}}}, {{b, {}}});
  if (shared.empty()) return std::nullopt;
  const auto meetings = contacts(EdgeTree(edges_of(a)), EdgeTree(edges_of(b)), tangle);
  return ShapeFault{say("two islands overlap"), say("islands that do not overlap"),
                    place_of(shared, meetings)};
}

}  // namespace

std::optional<ShapeFault> find_fault(const Ring& ring, double max_extent_cm) {
  if (const auto fault = find_bad_number(ring)) return fault;
  if (ring.empty() || !has_three_distinct(ring)) {
    return ShapeFault{say("it has fewer than three distinct corner points"), say("three or more"),
                      ring.empty() ? Point{} : ring.front()};
  }
  if (const auto fault = find_excess(ring, max_extent_cm)) return fault;
  if (const auto fault = find_crossing(ring)) return fault;
  if (area(ring) <= tolerance::grid_cm * edge_length(ring)) {
    return ShapeFault{say("it has no area"), say("an outline that goes round an area"),
                      ring.front()};
  }
  return std::nullopt;
}

bool is_thread(const Polygon& polygon) {
  // An overlay moves its corners by up to a grid spacing in x and in y.
  return area(polygon) <= 3 * tolerance::grid_cm * edge_length(polygon);
}

std::optional<ShapeFault> find_island_fault(const Ring& outline, const std::vector<Ring>& islands,
                                            double max_extent_cm) {
  for (const Ring& island : islands) {
    if (auto fault = find_fault(island, max_extent_cm)) {
      fault->problem = say("an island is no outline: {1}", {fault->problem});
      return fault;
    }
    if (const auto fault = find_misplaced(outline, island)) return fault;
  }
  for (std::size_t i = 0; i < islands.size(); ++i) {
    for (std::size_t j = i + 1; j < islands.size(); ++j) {
      if (const auto fault = find_overlap(islands[i], islands[j])) return fault;
    }
  }
  return std::nullopt;
}

Tidied tidy(const Polygon& polygon) {
  Tidied result;
  bool noted = false;
  const auto note = [&](Point where) {
    if (!std::exchange(noted, true)) result.where = where;
  };
  const auto take = [&](const Ring& ring) {
    const MendedRing part = mended(ring);
    result.spikes_removed += part.spikes_removed;
    if (part.spikes_removed > 0) note(part.where);
    return part.ring;
  };
  Polygon clean{take(polygon.outer), {}};
  if (clean.outer.empty()) return result;
  for (const Ring& hole : polygon.holes) {
    if (Ring ring = take(hole); !ring.empty()) clean.holes.push_back(std::move(ring));
  }
  orient(clean);
  const auto meetings = contacts(EdgeTree(edges_of(clean)), 1);
  if (meetings.empty()) {
    result.region = {std::move(clean)};
    return result;
  }
  note(meetings.front());
  result.region = unite({std::move(clean)}, {});
  result.split = result.region.size() > 1;
  return result;
}

}  // namespace drapewright::geometry
