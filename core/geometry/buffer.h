#pragma once

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Boost.Geometry's buffer with round corners, unverified: on difficult outlines it may be wrong
/// without saying so. `inset` and `outset` call it and check; nothing else may.
/// @param distance_cm  negative to shrink
/// @throws std::exception what Boost throws
Region unverified_buffer(const Region& region, double distance_cm, int points_per_circle);

}  // namespace drapewright::geometry
