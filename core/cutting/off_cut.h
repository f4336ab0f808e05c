#pragma once

#include <vector>

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

namespace drapewright::cutting {

/// The largest rectangle, its sides along the sheet's, that is left of a sheet when the outlines
/// are cut out of it with the gap kept: it reaches to the sheet's edges, and comes no nearer than
/// the gap to any outline. Safe-side: never larger than what is left; beside slanted edges it may
/// be short by a 200th of the sheet's length, among very many corners by 0.6 mm a side. Holes of
/// outlines count as left over. Without area (high = low) where nothing is left.
geometry::Box largest_off_cut(double length_cm, double width_cm,
                              const std::vector<geometry::Polygon>& outlines, double gap_cm);

}  // namespace drapewright::cutting
