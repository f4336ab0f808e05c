#pragma once

#include <QString>
#include <memory>
#include <optional>
#include <vector>

#include "core/base/error.h"
#include "core/dressing/plan.h"

namespace drapewright::desktop {

/// What became of a request: the plan of a case, or why there is none. All empty: nothing was
/// asked for, because nothing is drawn yet.
struct PlanResult {
  std::shared_ptr<const wound::Case> planned;  ///< the case it belongs to
  std::shared_ptr<const dressing::Plan> plan;  ///< nothing when it failed
  std::optional<InputError> fault;             ///< the case cannot be planned
  QString breakdown;                           ///< the program failed; its own words
};

/// The plan's findings, or the one stop that says why there is no plan.
std::vector<dressing::Finding> findings_of(const PlanResult& result);

}  // namespace drapewright::desktop
