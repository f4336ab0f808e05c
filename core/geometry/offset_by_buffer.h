#pragma once

#include "core/geometry/offset.h"

namespace drapewright::geometry {

/// `inset` and `outset` by Boost.Geometry's buffer, cleaned, thinned, jittered, checked and tried
/// again: the second opinion where the clearance map has a doubt, and its cross-check in the tests.
/// Same domain, errors and promises.
Offset inset_by_buffer(const Region& region, double distance_cm,
                       double max_error_cm = tolerance::offset_cm);
Offset outset_by_buffer(const Region& region, double distance_cm,
                        double max_error_cm = tolerance::offset_cm);

/// @throws std::invalid_argument unless the arguments lie in the domain of an offset
void require_offset_domain(const Region& region, double distance_cm, double max_error_cm);

}  // namespace drapewright::geometry
