#include "core/dressing/border_advice.h"

#include <algorithm>
#include <cmath>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"

namespace drapewright::dressing {
namespace {

using geometry::Point;

/// A film that has to reach farther than this to get round an obstacle is no help but a new plan.
constexpr double farthest_round_cm = 15;
constexpr double least_spare_cm = 1;

/// The part of the zones that the stretch is short by: the one nearest to its narrowest place.
const geometry::Polygon* nearest_part(const geometry::Region& no_film, Point p) {
  const geometry::Polygon* nearest = nullptr;
  double least_cm = 0;
  for (const geometry::Polygon& part : no_film) {
    const double cm = geometry::contains(part, p)
                          ? 0
                          : geometry::EdgeIndex(geometry::Region{part}).nearest(p).distance_cm;
    if (nearest && cm >= least_cm) continue;
    nearest = &part;
    least_cm = cm;
  }
  return nearest;
}

/// How far from the wounds the farthest corner of a part lies.
double farthest_corner(const geometry::Polygon& part, const geometry::Region& wounds) {
  const geometry::EdgeIndex edge(wounds);
  double farthest_cm = 0;
  for (const Point p : part.outer) {
    if (geometry::contains(wounds, p)) continue;
    farthest_cm = std::max(farthest_cm, edge.nearest(p).distance_cm);
  }
  return farthest_cm;
}

}  // namespace

BorderAdvice advice_for(const BorderStretch& stretch, const geometry::Region& wounds,
                        const geometry::Region& no_film, double enough_cm, double overlap_cm) {
  BorderAdvice advice{.strip_length_cm = stretch.length_cm + 2 * overlap_cm,
                      .strip_width_cm = stretch.least.value};
  if (const auto* part = nearest_part(no_film, stretch.least_line.from)) {
    const double reach_cm = farthest_corner(*part, wounds) + enough_cm;
    if (reach_cm <= farthest_round_cm) advice.reach_round_cm = reach_cm;
  }
  return advice;
}

std::optional<SpareFilm> spare_film(const FilmSheet& sheet, const geometry::Region& film,
                                    double away_deg) {
  const auto points = geometry::outer_points(film);
  std::optional<SpareFilm> best;
  double best_along = 0;
  for (const double side_deg : {sheet.place.angle_deg, sheet.place.angle_deg + 90}) {
    const double side_cm =
        side_deg == sheet.place.angle_deg ? sheet.place.length_cm : sheet.place.width_cm;
    const double spare_cm = side_cm - geometry::extent_along(points, side_deg);
    const double along = std::cos(geometry::radians(away_deg - side_deg));
    if (spare_cm < least_spare_cm || std::abs(along) <= best_along) continue;
    best_along = std::abs(along);
    best = SpareFilm{spare_cm, along > 0 ? side_deg : side_deg + 180};
  }
  return best;
}

}  // namespace drapewright::dressing
