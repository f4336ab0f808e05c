#include "core/tracing/loops.h"

#include <algorithm>
#include <span>

#include "core/geometry/measures.h"
#include "core/tracing/line.h"

namespace drapewright::tracing {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr double most_overshoot = 0.15;  // of the whole length; more is meant
constexpr double least_area_cm2 = 1e-3;  // a loop of a third of a millimetre is a tremor

struct Crossing {
  std::size_t first = 0;   ///< the edge that starts at this corner
  std::size_t second = 0;  ///< and the later one that it crosses
  Point where;
};

/// Where two edges cross with each other's ends on both sides; touching is no crossing.
std::optional<Point> crossing_of(Point a, Point b, Point c, Point d) {
  if (std::max(a.x, b.x) < std::min(c.x, d.x) || std::max(c.x, d.x) < std::min(a.x, b.x) ||
      std::max(a.y, b.y) < std::min(c.y, d.y) || std::max(c.y, d.y) < std::min(a.y, b.y)) {
    return std::nullopt;
  }
  const double c_side = geometry::cross(b - a, c - a), d_side = geometry::cross(b - a, d - a);
  const double a_side = geometry::cross(d - c, a - c), b_side = geometry::cross(d - c, b - c);
  if (c_side * d_side >= 0 || a_side * b_side >= 0) return std::nullopt;
  return a + (a_side / (a_side - b_side)) * (b - a);
}

std::optional<Crossing> find_crossing(const Ring& line, bool closed) {
  const std::size_t count = line.size(),
                    edges = closed ? count : count - std::min<std::size_t>(1, count);
  for (std::size_t i = 0; i < edges; ++i) {
    for (std::size_t k = i + 2; k < edges; ++k) {
      if (closed && i == 0 && k + 1 == count) continue;  // neighbours round the start
      const auto where = crossing_of(line[i], line[i + 1], line[k], line[(k + 1) % count]);
      if (where) return Crossing{i, k, *where};
    }
  }
  return std::nullopt;
}

/// From one corner of a line to a later one.
double length_between(const Ring& line, std::size_t from, std::size_t to) {
  return line_length(std::span(line).subspan(from, to - from + 1));
}

/// The line up to the point of its last stretch that lies nearest to its start.
Ring up_to_start(const Ring& line) {
  if (line.size() < 4) return line;
  const double most = most_overshoot * line_length(line);
  std::size_t nearest = line.size() - 1;
  double back = 0;
  for (std::size_t i = line.size() - 1; i > 2 && back <= most; --i) {
    if (geometry::distance(line[i], line[0]) < geometry::distance(line[nearest], line[0])) {
      nearest = i;
    }
    back += geometry::distance(line[i], line[i - 1]);
  }
  return {line.begin(), line.begin() + static_cast<std::ptrdiff_t>(nearest) + 1};
}

/// Where the edge from corner `edge` crosses any edge of the ring that is no neighbour.
std::optional<Point> crossing_of_edge(const Ring& ring, std::size_t edge) {
  const std::size_t count = ring.size(), next = (edge + 1) % count;
  for (std::size_t k = 0; k < count; ++k) {
    if (k == edge || k == next || (k + 1) % count == edge) continue;
    const auto where = crossing_of(ring[edge], ring[next], ring[k], ring[(k + 1) % count]);
    if (where) return where;
  }
  return std::nullopt;
}

}  // namespace

std::optional<Point> last_edge_crossing(const Ring& line) {
  if (line.size() < 4) return std::nullopt;
  const Point from = line[line.size() - 2], to = line.back();
  for (std::size_t k = 0; k + 3 < line.size(); ++k) {
    if (const auto where = crossing_of(from, to, line[k], line[k + 1])) return where;
  }
  return std::nullopt;
}

std::optional<Point> crossing_at_corner(const Ring& ring, std::size_t corner) {
  if (ring.size() < 4) return std::nullopt;
  const auto before = crossing_of_edge(ring, (corner + ring.size() - 1) % ring.size());
  return before ? before : crossing_of_edge(ring, corner);
}

Ring without_overshoot(const Ring& line) {
  const auto found = find_crossing(line, false);
  if (!found) return up_to_start(line);
  const double before =
      length_between(line, 0, found->first) + geometry::distance(line[found->first], found->where);
  const double after = geometry::distance(found->where, line[found->second + 1]) +
                       length_between(line, found->second + 1, line.size() - 1);
  if (before + after > most_overshoot * line_length(line)) return line;
  Ring ring{found->where};
  ring.insert(ring.end(), line.begin() + static_cast<std::ptrdiff_t>(found->first) + 1,
              line.begin() + static_cast<std::ptrdiff_t>(found->second) + 1);
  return find_crossing(ring, true) ? line : ring;
}

std::optional<Point> first_crossing(const Ring& line, bool closed) {
  const auto found = find_crossing(line, closed);
  return found ? std::optional(found->where) : std::nullopt;
}

std::vector<Ring> loops_at_crossings(const Ring& ring) {
  std::vector<Ring> open{ring}, loops;
  while (!open.empty()) {
    const Ring now = std::move(open.back());
    open.pop_back();
    if (now.size() < 3) continue;
    const auto found = find_crossing(now, true);
    if (!found) {
      // Asked of loops alone: a figure of eight has no area as a whole.
      if (geometry::area(now) >= least_area_cm2) loops.push_back(now);
      continue;
    }
    const auto at = [&](std::size_t i) { return now.begin() + static_cast<std::ptrdiff_t>(i); };
    Ring inner{found->where}, outer{found->where};
    inner.insert(inner.end(), at(found->first + 1), at(found->second + 1));
    outer.insert(outer.end(), at(found->second + 1), now.end());
    outer.insert(outer.end(), now.begin(), at(found->first + 1));
    open.push_back(std::move(inner));
    open.push_back(std::move(outer));
  }
  std::ranges::sort(loops, std::greater{}, [](const Ring& loop) { return geometry::area(loop); });
  return loops;
}

}  // namespace drapewright::tracing
