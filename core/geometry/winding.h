#pragma once

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Where a ring goes round more than once, or round the other way than as a whole: nothing for a
/// ring that only touches itself. Computed like the overlays, on their grid and without their
/// slivers. For this room's own use.
Region wrongly_wound(const Ring& ring);

}  // namespace drapewright::geometry
