#pragma once

#include "core/geometry/shape.h"

namespace drapewright::cutting {

/// A polygon with fewer corners that covers the given one and reaches beyond it by no more than
/// `most_cm`. Corners that turn inwards are cut across; where two turn outwards, the edge between
/// them gives way to the point where their other edges meet. Holes that close up are dropped.
/// @param polygon outer ring counter-clockwise, holes clockwise
geometry::Polygon simplify_outwards(const geometry::Polygon& polygon, double most_cm);

}  // namespace drapewright::cutting
