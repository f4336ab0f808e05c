#pragma once

#include "core/dressing/finding_list.h"
#include "core/dressing/plan.h"

namespace drapewright::dressing {

/// How often the dressing is put on over the course: every change interval, the first at once.
int applications_over(double course_days, double change_every_h);

/// The materials list (DESIGN: step 7), one line per item with its arithmetic in words. Reads the
/// plan's fill, drapes and areas; writes its applications and consumables.
void list_consumables(Plan& plan, const wound::Case& value, FindingList& findings);

}  // namespace drapewright::dressing
