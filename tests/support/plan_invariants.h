#pragma once

#include <string>
#include <vector>

#include "core/dressing/plan.h"

namespace drapewright::support {

/// What every plan must keep, whatever the wound: filler within the outline by the inset, film over
/// the border, aperture on filler, pieces that add up, findings for what falls short. Checked with
/// GEOS from the case itself; nothing of core's own computing is used.
/// @returns a sentence for each promise that the plan breaks; empty for a sound plan
std::vector<std::string> broken_promises(const wound::Case& value, const dressing::Plan& plan);

}  // namespace drapewright::support
