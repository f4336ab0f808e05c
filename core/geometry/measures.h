#pragma once

#include <span>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Twice-checked basics of shapes; lengths in cm, areas in cm2. Every function accepts either
/// orientation of its rings unless it says otherwise and returns 0 (or the origin) for no points.

/// Positive for a counter-clockwise ring.
double signed_area(const Ring& ring);
double area(const Ring& ring);
double area(const Polygon& polygon);  ///< less the holes
double area(const Region& region);

double edge_length(const Ring& ring);
double edge_length(const Polygon& polygon);  ///< outer and holes
double edge_length(const Region& region);

Point centroid(const Ring& ring);
Point centroid(const Region& region);  ///< by area; of the corner points where there is no area

/// Corner points of the convex hull, counter-clockwise, no three collinear.
Ring convex_hull(std::span<const Point> points);
/// All corner points of the outer rings.
std::vector<Point> outer_points(const Region& region);

/// The two points farthest apart. Of pairs equally far but for rounding the one with the least
/// extent at right angles, so that a shape that is turned or moved keeps its width.
Segment greatest_length(std::span<const Point> points);
/// Extent of the points along `direction_deg`: highest less lowest projection.
double extent_along(std::span<const Point> points, double direction_deg);
/// The least extent in any direction (it lies at right angles to an edge of the hull).
double least_width(std::span<const Point> points);
/// The pair of points whose projections onto `direction_deg` are lowest and highest.
Segment extremes_along(std::span<const Point> points, double direction_deg);

/// Direction of b - a, counter-clockwise from +x, in [0, 360).
double direction_deg(Point a, Point b);

struct Box {
  Point low;
  Point high;
  double width() const { return high.x - low.x; }
  double height() const { return high.y - low.y; }
};
/// @pre points is not empty
Box bounding_box(std::span<const Point> points);

}  // namespace drapewright::geometry
