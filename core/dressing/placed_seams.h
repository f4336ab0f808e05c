#pragma once

#include <vector>

#include "core/dressing/plan.h"

namespace drapewright::dressing {

/// The seams that are sides of a piece, where they lie on its sheet, in cm. A seam is a side of two
/// parts, and so lies on the sheet twice.
std::vector<geometry::Segment> placed_seams(const Fill& fill, const Placement& placement);

}  // namespace drapewright::dressing
