#pragma once

#include "core/geometry/shape.h"
#include "tests/support/made_outlines.h"

namespace drapewright::support {

/// Outlines as a program traces them from a picture of a blob with whiskers one pixel wide. The
/// blob is some 2 x `radius_px` pixels of 0.0587 cm across.

/// Along the pixels' edges: a staircase.
geometry::Ring traced_along_edges(OutlineMaker& maker, int radius_px);
/// Through the pixels' centres: whiskers become spikes without width.
geometry::Ring traced_through_centres(OutlineMaker& maker, int radius_px);

}  // namespace drapewright::support
