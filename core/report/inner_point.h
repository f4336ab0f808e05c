#pragma once

#include "core/geometry/shape.h"

namespace drapewright::report {

/// A point well inside a polygon, outside its holes, to hang a word on: the middle of the widest
/// of a few level cuts. Linear in the number of points. @pre the outer ring has three points
geometry::Point inner_point(const geometry::Polygon& polygon);

}  // namespace drapewright::report
