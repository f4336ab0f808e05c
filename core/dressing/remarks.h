#pragma once

#include <string>
#include <vector>

#include "core/dressing/finding_list.h"
#include "core/dressing/plan.h"
#include "core/wound/case.h"

namespace drapewright::dressing {

/// What must be said whatever the geometry: cautions that are present or were not gone through,
/// settings outside common practice, tunnels and pockets, pieces that did not come out again, an
/// assessment that has aged.
/// @param today YYYY-MM-DD, or empty
void remark_on_case(const wound::Case& value, const std::string& today, FindingList& findings);

/// Films that may close round a limb of the case's girth: their larger side reaches it. The limb's
/// axis is not known, so whether they do lies with the reader.
void remark_on_girth(const wound::Case& value, const std::vector<Drape>& drapes,
                     FindingList& findings);

}  // namespace drapewright::dressing
