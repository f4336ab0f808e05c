#pragma once

#include "core/dressing/film_sheet.h"
#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

using Maps = std::vector<const geometry::ClearanceMap*>;

/// Cuts the film of one group (DESIGN: step 5): within border_cm of its wounds and of the drape's
/// bridges, trimmed clear of the no_film zones; measures the border that is left and takes the
/// cheapest sheets that hold it, and those that protect the skin under the bridges.
/// @param drape   with its wounds, centroid and bridges; gets the rest
/// @param wounds  the group's shapes, united
/// @param maps    one of each of the group's wounds
void cut_film(Drape& drape, const geometry::Region& wounds, const Maps& maps,
              const geometry::Region& no_film, const wound::Case& value, FilmShelf& shelf,
              FindingList& findings);

}  // namespace drapewright::dressing
