#pragma once

#include "core/report/sketch.h"

namespace drapewright::desktop {

/// The sketch without the points that cannot be seen: no drawn line moves by more than
/// `tolerance_cm`. A 20,000-point outline has some 1,000 visible points.
report::Sketch thinned(const report::Sketch& sketch, double tolerance_cm);

}  // namespace drapewright::desktop
