#pragma once

#include "core/geometry/medial/outline.h"

namespace drapewright::geometry::medial {

/// Whether any two edges of the outline cross or touch other than at the corner that they share.
/// Exact, on integers, n log n. Method: the sweep of Shamos and Hoey (1976).
bool edges_meet(const Outline& outline);

}  // namespace drapewright::geometry::medial
