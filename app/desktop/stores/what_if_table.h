#pragma once

#include "app/desktop/stores/number_table.h"
#include "app/desktop/stores/what_if_job.h"

namespace drapewright::desktop {

/// The alternatives side by side, a column each: cost, then every item's use, what to pick, and
/// with a stock list what to order and when.
/// @param differences  each alternative less what is as it is
NumberTable what_if_table(const WhatIfResult& result, bool differences);

/// Items that an alternative uses, that are not used as it is, and whose cost nobody knows: that
/// alternative looks cheaper than it is.
QStringList without_cost(const WhatIfResult& result);

}  // namespace drapewright::desktop
