#pragma once

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"
#include "core/dressing/skin.h"

namespace drapewright::dressing {

/// Lays film over the wounds (DESIGN: steps 5 and 6): groups whose films would overlap share one
/// film and one port; bridges are led where the port needs them; each film grows with its bridges,
/// is trimmed clear of the no_film zones and given the cheapest sheets that hold it. Bridges are
/// added to the fill's piece count.
/// @param progress  asked before every group
std::vector<Drape> drape_wounds(const std::vector<PreparedWound>& wounds, const Zones& zones,
                                const wound::Case& value, Fill& fill, FindingList& findings,
                                const Progress& progress);

}  // namespace drapewright::dressing
