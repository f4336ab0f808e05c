#pragma once

#include "core/dressing/finding_list.h"
#include "core/wound/case.h"

namespace drapewright::dressing {

/// What the place of the body asks for: its cautions, the clock's way on the foot, the girth of a
/// limb that was not measured, and a place that is not known or not clear.
void remark_on_site(const wound::Case& value, FindingList& findings);

}  // namespace drapewright::dressing
