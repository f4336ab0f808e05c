#pragma once

#include "core/dressing/cut_plan.h"
#include "core/dressing/finding_list.h"

namespace drapewright::dressing {

/// What the reader must know of the way the filler is cut: pieces that had to be split, sheets of
/// another thickness, what the stock lacks, and what a choice by hand costs.
void remark_on_cut(const CutPlan& cut, const wound::Case& value, FindingList& findings);

}  // namespace drapewright::dressing
