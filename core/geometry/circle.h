#pragma once

#include <optional>

#include "core/base/tolerances.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// The largest circle that lies wholly inside a region, outside its holes. The radius is never
/// overstated (it is the centre's true distance to the edge) and falls short of the best by at
/// most `tolerance_cm`. Nothing for a region without area or narrower than the tolerance.
/// @throws std::invalid_argument when the tolerance is not positive and finite
std::optional<Circle> largest_inscribed_circle(const Region& region,
                                               double tolerance_cm = tolerance::circle_cm);

/// The same with the circle's centre kept inside `centres`. Nothing when no point of it has
/// clearance. Same tolerance and errors.
std::optional<Circle> largest_circle_centred_in(const Region& region, const Region& centres,
                                                double tolerance_cm = tolerance::circle_cm);

}  // namespace drapewright::geometry
