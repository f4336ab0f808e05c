#pragma once

#include "core/report/paper.h"

namespace drapewright::report {

/// What to do at a leak, a blockage, a full canister, a pause over two hours, bleeding: one page in
/// plain words, of the trade and not of any device, each with where it comes from.
/// @param plan_label  of the case whose dressing it lies beside
Document what_to_do_page(const std::string& plan_label, const std::string& assessed,
                         const PageOptions& options = {});

}  // namespace drapewright::report
