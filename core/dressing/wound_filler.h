#pragma once

#include <vector>

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// The layers of filler of one wound, from the skin down, each cut to the outline at its underside;
/// the lowest reaches into undermined pockets. What does not fit is a finding.
std::vector<Layer> fill_wound(const PreparedWound& wound, const wound::Case& value,
                              FindingList& findings);

}  // namespace drapewright::dressing
