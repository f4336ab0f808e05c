#pragma once

#include <vector>

#include "core/dressing/plan.h"
#include "core/geometry/shape.h"

namespace drapewright::dressing {

/// What the stretches of a wound's edge are told apart by.
struct BorderLimits {
  double asked_cm = 0;          ///< the film reaches no farther
  double enough_cm = 0;         ///< <= asked_cm
  double tracing_error_cm = 0;  ///< >= 0
};
/// Enough is common practice's least, or what was asked for where that is less.
BorderLimits border_limits(const wound::Case& value);

/// The wounds' edge cut into stretches where the distance to the no_film zones passes a limit.
/// The ends are exact (in closed form, no stepping), and so is each least border. Together the
/// stretches are the whole edge; without zones each ring is one.
std::vector<BorderStretch> border_stretches(const geometry::Region& wounds,
                                            const geometry::Region& no_film,
                                            const BorderLimits& limits);

/// All edge of one kind.
double length_of(const std::vector<BorderStretch>& stretches, BorderKind kind);

}  // namespace drapewright::dressing
