#pragma once

#include "core/dressing/plan.h"
#include "core/wound/case.h"

namespace drapewright::support {

/// A case with a plan that was put together by hand (elliptical insets instead of true ones): for
/// tests of drawing, which must not depend on planning.
struct SamplePlan {
  wound::Case value;
  dressing::Plan plan;
};

/// One elliptical wound "A" about the origin with one piece of filler, film, sheet and port.
SamplePlan sample_plan(double length_cm = 8, double width_cm = 5, double angle_deg = 70);

/// Everything at once: three layers, an island, an undermined pocket, an unexplored tunnel, a zone
/// of each kind, a second wound, film cut short, unfilled parts.
SamplePlan crowded_plan();

/// One wound whose outline, filler and film have this many points each, with small waves.
SamplePlan dense_plan(int points);

}  // namespace drapewright::support
