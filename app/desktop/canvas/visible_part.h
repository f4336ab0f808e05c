#pragma once

#include "core/geometry/measures.h"
#include "core/report/sketch.h"

namespace drapewright::desktop {

/// The sketch without what cannot be seen: areas are cut off at `window` (their cut edges run along
/// it, so it must be larger than the view), and points are dropped as long as no drawn line moves
/// by more than `tolerance_cm`. A stroke's cost grows with its points; a 20,000-point outline has
/// some hundreds that show.
report::Sketch visible_part(const report::Sketch& sketch, const geometry::Box& window,
                            double tolerance_cm);

}  // namespace drapewright::desktop
