#pragma once

#include <optional>
#include <string>

#include "core/dressing/plan.h"
#include "core/geometry/shape.h"

namespace drapewright::dressing {

/// What helps where the border falls short or may do so.
/// @param stretch   of another kind than `enough`
/// @param overlap_cm  what a strip reaches beyond the stretch at either end
BorderAdvice advice_for(const BorderStretch& stretch, const geometry::Region& wounds,
                        const geometry::Region& no_film, double enough_cm, double overlap_cm);

/// What a sheet has to spare beside the film that is cut from it, and where it helps.
struct SpareFilm {
  double spare_cm = 0;     ///< along one of the sheet's sides
  double towards_deg = 0;  ///< direction, along that side, away from the short border
};
/// @param away_deg  direction from the short border across the wound
/// @returns nothing where less than a centimetre is left over
std::optional<SpareFilm> spare_film(const FilmSheet& sheet, const geometry::Region& film,
                                    double away_deg);

}  // namespace drapewright::dressing
