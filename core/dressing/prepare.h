#pragma once

#include <memory>
#include <vector>

#include "core/base/progress.h"
#include "core/dressing/finding_list.h"
#include "core/geometry/medial/clearance_map.h"
#include "core/geometry/shape.h"
#include "core/wound/case.h"

namespace drapewright::dressing {

/// A wound with its shape tidied: what every step of the plan works on.
struct PreparedWound {
  const wound::Wound* wound = nullptr;
  geometry::Region shape;  ///< outline less islands; never empty
  /// Of that shape, built once: every inset, border and narrow place is asked of it.
  std::shared_ptr<const geometry::ClearanceMap> map;
};

/// @param assessment checked by wound::check; must outlive the result
/// @param progress   asked before every wound
std::vector<PreparedWound> prepare_wounds(const wound::Assessment& assessment,
                                          FindingList& findings, const Progress& progress = {});

/// The united zones of one kind, tidied; empty when there are none.
geometry::Region zones_of_kind(const wound::Assessment& assessment, wound::ZoneKind kind);

/// Some point well inside a polygon, to hang a finding on.
geometry::Point inside_point(const geometry::Polygon& polygon);

}  // namespace drapewright::dressing
