#include "core/geometry/medial/soundness.h"

#include <algorithm>
#include <cmath>

#include "core/base/say.h"

namespace drapewright::geometry::medial {
namespace {

/// Rounding in a vertex's position, in grid units: a hundredth of the grid near by, and a part in
/// 10^9 far out, where vertices of nearly parallel edges lie.
double slack(double clearance) { return 1e-2 + 1e-9 * clearance; }

bool corners_are_vertices(const Diagram& diagram) {
  std::vector<char> seen(diagram.outline.corners.size(), 0);
  std::size_t found = 0;
  std::vector<char> counted(diagram.vertices.size(), 0);
  for (const HalfEdge& edge : diagram.edges) {
    if (!diagram.is_corner(edge.site) || diagram.vertex(edge.from).clearance > 0) continue;
    if (diagram.vertex(edge.from).at != diagram.start(edge.site)) return false;
    if (counted[static_cast<std::size_t>(edge.from)]++) return false;
    if (seen[static_cast<std::size_t>(edge.site)]++) return false;
    ++found;
  }
  const auto at_zero =
      static_cast<std::size_t>(std::count_if(diagram.vertices.begin(), diagram.vertices.end(),
                                             [](const Vertex& v) { return !(v.clearance > 0); }));
  return found == diagram.outline.corners.size() && at_zero == found;
}

bool sites_are_equally_far(const Diagram& diagram) {
  return std::all_of(diagram.edges.begin(), diagram.edges.end(), [&](const HalfEdge& edge) {
    if (edge.from == diagram.infinity) return true;
    const Vertex& v = diagram.vertex(edge.from);
    const double d = distance(v.at, diagram.foot(edge.site, v.at));
    return std::abs(d - v.clearance) <= slack(v.clearance);
  });
}

Point direction_of(const Diagram& diagram, int edge) {
  return diagram.direction[static_cast<std::size_t>(edge)];
}

/// A point of a corner's cell lies past the ends of both its edges; the foot of a point of an
/// edge's cell lies on that edge.
bool foot_stays_on_site(const Diagram& diagram, int site, const Vertex& v) {
  const double room = slack(v.clearance);
  const Point from_start = v.at - diagram.start(site);
  if (diagram.is_corner(site)) {
    const int before = diagram.outline.previous[static_cast<std::size_t>(site)];
    return dot(from_start, direction_of(diagram, before)) >= -room &&
           dot(from_start, direction_of(diagram, site)) <= room;
  }
  const int edge = site - diagram.outline.size();
  const Point end = diagram.start(diagram.outline.next[static_cast<std::size_t>(edge)]);
  const Point along = direction_of(diagram, edge);
  return dot(from_start, along) >= -room && dot(v.at - end, along) <= room;
}

/// Seen from a corner the cell's edge turns to the left. On the inside of an edge of the outline,
/// its left, feet move from its end to its start; on the outside the other way.
bool foot_moves_on(const Diagram& diagram, int e) {
  const Vertex& a = diagram.vertex(diagram.from(e));
  const Vertex& b = diagram.vertex(diagram.to(e));
  const int site = diagram.site(e);
  const double farther = std::max(a.clearance, b.clearance);
  const double room = slack(farther);
  if (diagram.is_corner(site)) {
    const Point origin = diagram.start(site);
    return cross(a.at - origin, b.at - origin) >= -room * farther;
  }
  const double step = dot(b.at - a.at, direction_of(diagram, site - diagram.outline.size()));
  return diagram.side(e) == Side::inside ? step <= room : step >= -room;
}

/// The same where a half-edge runs out to infinity or comes in from there.
bool foot_moves_on_far_out(const Diagram& diagram, int e) {
  const int far = diagram.infinity;
  const int site = diagram.site(e);
  const bool outward = diagram.to(e) == far;
  const Vertex& near = diagram.vertex(outward ? diagram.from(e) : diagram.to(e));
  if (outward && diagram.from(e) == far) return false;
  if (near.side == Side::inside) return false;
  if (!diagram.is_corner(site)) return diagram.adjoin(site, diagram.site(e ^ 1));
  const Point out = diagram.outward(e);
  const Point here = near.at - diagram.start(site);
  const double room = slack(near.clearance);
  if (outward) {
    const int after = diagram.next(e);
    if (diagram.from(after) != far || diagram.to(after) == far) return false;
    return cross(here, out) >= -room && cross(out, diagram.outward(after)) >= -1e-9;
  }
  return cross(out, here) >= -room;
}

bool cells_are_in_order(const Diagram& diagram) {
  for (int e = 0; e < diagram.edge_count(); ++e) {
    if (diagram.from(diagram.next(e)) != diagram.to(e)) return false;
    const Side a = diagram.vertex(diagram.from(e)).side;
    const Side b = diagram.vertex(diagram.to(e)).side;
    if (a != Side::edge && b != Side::edge && a != b) return false;
    if (a == Side::edge && b == Side::edge) return false;
    if (diagram.from(e) != diagram.infinity &&
        !foot_stays_on_site(diagram, diagram.site(e), diagram.vertex(diagram.from(e))))
      return false;
    const bool far = diagram.from(e) == diagram.infinity || diagram.to(e) == diagram.infinity;
    if (!(far ? foot_moves_on_far_out(diagram, e) : foot_moves_on(diagram, e))) return false;
  }
  return true;
}

/// A direction as a number that grows counter-clockwise from 0 to 4: an angle without the arc
/// tangent.
double turned_by(Point v) {
  const double x = v.x / (std::abs(v.x) + std::abs(v.y));
  return v.y >= 0 ? 1 - x : 3 + x;
}

/// Going once round a vertex, the feet on the sites that meet there go once round it as well.
bool feet_go_round_once(const Diagram& diagram, int start, std::vector<char>& visited) {
  const Vertex& v = diagram.vertex(diagram.from(start));
  double round = 0;
  Point foot = diagram.foot(diagram.site(start), v.at);
  int e = start;
  do {
    visited[static_cast<std::size_t>(e)] = 1;
    e = diagram.next(e ^ 1);  // clockwise
    const Point following = diagram.foot(diagram.site(e), v.at);
    if (distance(foot, following) > slack(v.clearance)) {
      const double turn = turned_by(foot - v.at) - turned_by(following - v.at);
      round += turn < 0 ? turn + 4 : turn;
    }
    foot = following;
  } while (e != start && round < 5);
  return std::abs(round - 4) < 1;
}

bool vertices_are_in_order(const Diagram& diagram) {
  std::vector<char> visited(diagram.edges.size(), 0);
  for (int e = 0; e < diagram.edge_count(); ++e) {
    if (visited[static_cast<std::size_t>(e)] || diagram.from(e) == diagram.infinity ||
        diagram.vertex(diagram.from(e)).side == Side::edge)
      continue;
    if (!feet_go_round_once(diagram, e, visited)) return false;
  }
  return true;
}

bool sectors_fill_the_outline(const Diagram& diagram) {
  double sectors = 0;
  for (int e = 0; e < diagram.edge_count(); ++e)
    if (diagram.side(e) == Side::inside) sectors += diagram.sector_area(e);
  double area = 0;
  double length = 0;
  const Outline& outline = diagram.outline;
  for (std::size_t i = 0; i < outline.corners.size(); ++i) {
    const Point a = real(outline.corners[i]);
    const Point b = real(outline.corners[static_cast<std::size_t>(outline.next[i])]);
    area += 0.5 * cross(a, b);
    length += distance(a, b);
  }
  return std::abs(sectors - area) <= 1e-9 * area + 1e-2 * length;
}

}  // namespace

std::string find_fault(const Diagram& diagram) {
  if (!corners_are_vertices(diagram))
    return say("a corner of the outline is missing from the diagram");
  if (!sites_are_equally_far(diagram)) return say("a point of the diagram is nearer to one edge");
  if (!cells_are_in_order(diagram)) return say("a cell of the diagram is out of order");
  if (!vertices_are_in_order(diagram)) return say("a point of the diagram is out of order");
  if (!sectors_fill_the_outline(diagram)) return say("the diagram does not fill the outline");
  return {};
}

}  // namespace drapewright::geometry::medial
