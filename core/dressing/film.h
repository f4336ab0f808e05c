#pragma once

#include "core/dressing/film_sheet.h"
#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// Cuts the film of one group (DESIGN: step 5): within border_cm of its wounds and of the drape's
/// bridges, trimmed clear of the no_film zones; measures the border that is left and takes the
/// cheapest sheets that hold it, and those that protect the skin under the bridges.
/// @param drape   with its wounds, centroid and bridges; gets the rest
/// @param wounds  the group's shapes, united
/// @param map     of that shape, where there is one already; nullptr else
void cut_film(Drape& drape, const geometry::Region& wounds, const geometry::ClearanceMap* map,
              const geometry::Region& no_film, const wound::Case& value, FilmShelf& shelf,
              FindingList& findings);

}  // namespace drapewright::dressing
