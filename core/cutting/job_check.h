#pragma once

#include "core/cutting/layout.h"

namespace drapewright::cutting {

/// @throws InputError unless there is something to cut from, every side, gap and cost is finite and
///         in its domain, and every piece is a faultless polygon; says which sheet or piece is
///         wrong, with a pointer into the job as it is written (docs/layout-job.schema.json)
void check(const Job& job);

}  // namespace drapewright::cutting
