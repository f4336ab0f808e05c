#pragma once

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// A ring without repeated points, collinear points and the tips of zero-width spikes. For this
/// room's own use.
struct MendedRing {
  Ring ring;  ///< empty when nothing with an area is left
  int spikes_removed = 0;
  Point where;  ///< tip of the first spike
};
MendedRing mended(const Ring& ring);

/// The simple loops of a ring that comes back to the same corner point more than once.
std::vector<Ring> loops_of(const Ring& ring);

Ring reversed(Ring ring);
/// Outer rings counter-clockwise, holes clockwise.
void orient(Polygon& polygon);

}  // namespace drapewright::geometry
