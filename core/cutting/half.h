#pragma once

#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::cutting {

/// A straight cut: what lies at `dot(normal, p) <= at` comes apart from the rest.
struct Cut {
  geometry::Point normal;  ///< of length 1
  double at = 0;

  double height(geometry::Point p) const { return geometry::dot(normal, p) - at; }
  Cut reversed() const { return {-1.0 * normal, -at}; }
};

/// What there is to know of the near side of a cut before it is made: cheap, for trying many.
struct Half {
  std::vector<geometry::Point> points;  ///< outer corners, and where the cut meets the outer ring
  double area_cm2 = 0;
  double seam_cm = 0;  ///< length of the cut within the piece
  int seams = 0;       ///< in how many stretches
};
/// @param piece outer ring counter-clockwise, holes clockwise
Half near_half(const geometry::Polygon& piece, const Cut& cut);

/// A piece cut apart, and the stretches along which the parts were one.
struct Halves {
  geometry::Region parts;
  std::vector<geometry::Segment> seams;
};
Halves cut_apart(const geometry::Polygon& piece, const Cut& cut);

}  // namespace drapewright::cutting
