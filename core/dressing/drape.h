#pragma once

#include "core/dressing/film_sheet.h"
#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// Lays film over the wounds (DESIGN: step 5): groups whose films would overlap share one; each is
/// trimmed clear of the no_film zones and given the cheapest single sheet that holds it. The ports
/// are left to place_port.
/// @param no_film the united no_film zones
std::vector<Drape> drape_wounds(const std::vector<PreparedWound>& wounds,
                                const geometry::Region& no_film, const wound::Case& value,
                                FilmShelf& shelf, FindingList& findings);

}  // namespace drapewright::dressing
