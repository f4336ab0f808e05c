#pragma once

#include <vector>

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

namespace drapewright::cutting {

using geometry::Box;
using geometry::Point;

/// A convex polygon, counter-clockwise, with the outward unit normal of every edge (edge k runs
/// from corner k to corner k + 1).
struct Convex {
  std::vector<Point> corners;
  std::vector<Point> normals;
};

/// Cuts a polygon with holes into few convex parts that cover it and overlap nowhere.
/// @param polygon outer ring counter-clockwise, holes clockwise, no three points collinear
std::vector<Convex> convex_parts(const geometry::Polygon& polygon);

/// The convex hull of its outer ring.
Convex convex_hull_of(const geometry::Polygon& polygon);

}  // namespace drapewright::cutting
