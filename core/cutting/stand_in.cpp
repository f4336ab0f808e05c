#include <algorithm>
#include <cmath>

#include "core/cutting/oriented.h"
#include "core/geometry/measures.h"

namespace drapewright::cutting {

StandIn make_stand_in(const geometry::Polygon& piece, double tolerance_cm) {
  (void)tolerance_cm;
  StandIn result;
  result.area_cm2 = geometry::area(piece);
  const Box box = geometry::bounding_box(piece.outer);
  result.reference = 0.5 * (box.low + box.high);
  geometry::Polygon about = piece;
  for (auto& p : about.outer) p = p - result.reference;
  for (auto& hole : about.holes) {
    for (auto& p : hole) p = p - result.reference;
  }
  result.parts = convex_parts(about);
  result.hull = geometry::convex_hull(about.outer);
  for (const auto& p : result.hull) {
    result.reach_cm = std::max(result.reach_cm, geometry::norm(p));
  }
  return result;
}

}  // namespace drapewright::cutting
