#pragma once

#include <vector>

#include "core/geometry/medial/diagram.h"

namespace drapewright::geometry::medial {

/// A part of the inside where the clearance is no more than some value: it reaches from the edge
/// of the outline to its `mouths`, the points where the medial axis has just that clearance.
struct Narrow {
  Ring ring;  ///< the part lies on its left; one around it, negative if inside it
  std::vector<Point> mouths;
  std::vector<int> ways;  ///< half-edges of the diagram along which it was walked
};

/// The boundaries of everything inside that has at most this clearance: pieces of the outline,
/// joined at each mouth by its two shortest ways to the edge. What is not in them is where a disc
/// of that radius reaches, but for the discs around the mouths.
std::vector<Narrow> narrow_parts(const Diagram& diagram, double clearance);

}  // namespace drapewright::geometry::medial
