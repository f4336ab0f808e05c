#pragma once

#include <functional>
#include <vector>

#include "core/dressing/cut.h"
#include "core/dressing/plan.h"

namespace drapewright::dressing {

/// How every group of a draft is cut.
struct CutPlan {
  std::vector<CutGroup> groups;  ///< thickest first
  std::vector<Cut> ways;         ///< per group: the one that the plan follows
  std::vector<SheetComparison> comparison;
};

/// Lays out the first layouts of all groups and sizes, then works on those that the plan follows.
/// @param told  given every way to cut the whole that is better than the one before
CutPlan cut_filler(const Plan& draft, const wound::Case& value, const PlanOptions& options,
                   const std::function<void(const CutPlan&)>& told, const Progress& progress);

/// Writes a way to cut into the plan: sheets, comparison, and where pieces had to be split their
/// parts, seams and number.
/// @param plan  the draft that the cut was worked out from
void enter(const CutPlan& cut, Plan& plan);

}  // namespace drapewright::dressing
