#pragma once

#include "core/report/paper.h"
#include "core/wound/case.h"

namespace drapewright::report {

/// The plan's layers side by side, as a trainee is to draw them: the wound is given, with blanks
/// for the figures; or solved, with the layers drawn and the figures filled in. One page each.
/// @param plan of that case
Document teaching_pages(const wound::Case& value, const dressing::Plan& plan, bool solved,
                        const PageOptions& options = {});

}  // namespace drapewright::report
