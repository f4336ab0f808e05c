#pragma once

#include "app/desktop/stores/number_table.h"
#include "app/desktop/stores/what_if_job.h"

namespace drapewright::desktop {

/// The alternatives side by side, a column each: cost, then every item's use, what to pick, and
/// with a stock list what to order and when.
/// @param differences  each alternative less what is as it is
NumberTable what_if_table(const WhatIfResult& result, bool differences);

}  // namespace drapewright::desktop
