#pragma once

#include "core/dressing/plan.h"
#include "core/geometry/offset.h"

namespace drapewright::dressing {

/// Where a border of a given width ends on the skin: all points within `border_cm` of what lies
/// under one film, its wounds and its bridges, whatever the plan's own border. Zones that take no
/// film are not left out. Not verified: there is no line that can be relied on.
/// @throws std::invalid_argument for a border that is negative or not finite
geometry::Offset border_line(const wound::Case& value, const Drape& drape, double border_cm);

}  // namespace drapewright::dressing
