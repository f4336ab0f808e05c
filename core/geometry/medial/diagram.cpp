#include "core/geometry/medial/diagram.h"

#include <algorithm>
#include <cmath>

namespace drapewright::geometry::medial {
namespace {

Point left_of(Point v) { return {-v.y, v.x}; }
double root(double v) { return std::sqrt(std::max(0.0, v)); }

}  // namespace

int Diagram::polygon_of(int site) const {
  return outline.polygon[static_cast<std::size_t>(site % outline.size())];
}

Point Diagram::start(int site) const {
  return real(outline.corners[static_cast<std::size_t>(site % outline.size())]);
}

bool Diagram::adjoin(int a, int b) const {
  if (is_corner(a) == is_corner(b)) return false;
  const int corner = std::min(a, b);
  const int edge = std::max(a, b) - outline.size();
  return edge == corner || outline.next[static_cast<std::size_t>(edge)] == corner;
}

Point Diagram::foot(int site, Point p) const {
  const Point a = start(site);
  if (is_corner(site)) return a;
  const Point along = direction[static_cast<std::size_t>(site - outline.size())];
  return a + dot(p - a, along) * along;
}

Side Diagram::side(int e) const {
  const Side at_start = vertex(from(e)).side;
  return at_start != Side::edge ? at_start : vertex(to(e)).side;
}

Point Diagram::at_clearance(int e, double clearance) const {
  const int mine = site(e);
  const int other = site(e ^ 1);
  const Vertex& a = vertex(from(e));
  const Vertex& b = vertex(to(e));

  if (!is_corner(mine) && !is_corner(other)) {  // bisector of two lines: linear in the clearance
    if (a.clearance == b.clearance) return a.at;
    const double t = (clearance - a.clearance) / (b.clearance - a.clearance);
    return a.at + t * (b.at - a.at);
  }
  if (adjoin(mine, other)) {  // upright on an end of an edge
    const int corner = std::min(mine, other);
    const Point along = direction[static_cast<std::size_t>(std::max(mine, other) - outline.size())];
    const double up = side(e) == Side::inside ? clearance : -clearance;
    return start(corner) + up * left_of(along);
  }
  if (is_corner(mine) && is_corner(other)) {  // bisector of two points
    const Point half = 0.5 * (start(mine) - start(other));
    const Point middle = start(other) + half;
    const double h = norm(half);
    const Point along = (-1 / h) * left_of(half);  // my own site lies on the left
    const double reach = root(clearance * clearance - h * h);
    const bool ahead =
        to(e) == infinity ||
        (from(e) != infinity && dot(a.at - middle, along) + dot(b.at - middle, along) > 0);
    return middle + (ahead ? reach : -reach) * along;
  }
  // Parabola between a corner (its focus) and an edge (its directrix).
  const Point focus = start(std::min(mine, other));
  const int line = std::max(mine, other);
  const Point along = direction[static_cast<std::size_t>(line - outline.size())];
  const Point base = foot(line, focus);
  const double k = dot(focus - base, left_of(along));
  const Point up = k > 0 ? left_of(along) : -1 * left_of(along);
  const double reach = root(2 * std::abs(k) * clearance - k * k);
  const bool ahead = dot(a.at - base, along) + dot(b.at - base, along) > 0;
  return base + (ahead ? reach : -reach) * along + clearance * up;
}

Point Diagram::outward(int e) const {
  const int mine = site(e);
  const int other = site(e ^ 1);
  if (adjoin(mine, other))  // the outside lies on an edge's right
    return -1 *
           left_of(direction[static_cast<std::size_t>(std::max(mine, other) - outline.size())]);
  const Point across = start(mine) - start(other);  // my own site lies on the left of the way
  const Point along = (-1 / norm(across)) * left_of(across);
  return to(e) == infinity ? along : -1 * along;
}

double Diagram::sector_area(int e) const {
  const int mine = site(e);
  const int other = site(e ^ 1);
  const Point a = vertex(from(e)).at;
  const Point b = vertex(to(e)).at;
  const bool curved = is_corner(mine) != is_corner(other) && !adjoin(mine, other);
  if (!curved) {
    if (is_corner(mine)) return 0.5 * std::abs(cross(a - start(mine), b - start(mine)));
    const Point along = direction[static_cast<std::size_t>(mine - outline.size())];
    const double width = std::abs(dot(b - a, along));
    return 0.5 * (vertex(from(e)).clearance + vertex(to(e)).clearance) * width;
  }
  const Point focus = start(std::min(mine, other));
  const int line = std::max(mine, other);
  const Point along = direction[static_cast<std::size_t>(line - outline.size())];
  const double k = std::abs(cross(along, focus - start(line)));
  const double x0 = dot(a - focus, along);
  const double x1 = dot(b - focus, along);
  const double under = std::abs((x1 * x1 * x1 - x0 * x0 * x0) / (6 * k) + 0.5 * k * (x1 - x0));
  return is_corner(mine) ? 0.5 * under : under;  // the focus sees half of what lies under the arc
}

}  // namespace drapewright::geometry::medial
