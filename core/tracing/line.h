#pragma once

#include <span>

#include "core/geometry/shape.h"

namespace drapewright::tracing {

/// The length of an open line, in cm.
double line_length(std::span<const geometry::Point> line);

/// The angle at a corner of a line, 0 to 180 degrees; 180: it goes straight on.
double corner_angle_deg(geometry::Point before, geometry::Point corner, geometry::Point after);

}  // namespace drapewright::tracing
