#pragma once

#include <optional>
#include <vector>

#include "core/dressing/film_sheet.h"
#include "core/geometry/shape.h"

namespace drapewright::dressing {

/// Several overlapping sheets that together cover a film too large for one.
struct FilmCover {
  std::vector<FilmSheet> sheets;
  std::vector<geometry::Segment> seams;  ///< middle of each overlap, for the drawing
};

/// The fewest sheets found that cover `film` with neighbours overlapping by overlap_cm, then the
/// cheapest for each part. The film is parted by straight cuts into columns and these into rows,
/// tried at many angles; fewer sheets than found may be possible with freer cuts, so compare with
/// least_possible. Every part is checked to lie on its sheet and the whole to be covered.
/// @returns nothing when the shelf does not hold enough, or the overlap is as wide as the sheets
std::optional<FilmCover> cover_with_sheets(const geometry::Region& film, double overlap_cm,
                                           FilmShelf& shelf);

/// No cover needs fewer sheets than this: by area, of the largest sheet in stock.
int least_possible_sheets(double film_area_cm2, const FilmShelf& shelf);

}  // namespace drapewright::dressing
