#include <algorithm>
#include <cmath>
#include <utility>

#include "core/cutting/oriented.h"
#include "core/cutting/simplify.h"
#include "core/geometry/measures.h"

namespace drapewright::cutting {

namespace {

constexpr std::size_t few_corners = 24;

std::size_t corner_count(const geometry::Polygon& piece) {
  std::size_t count = piece.outer.size();
  for (const auto& hole : piece.holes) count += hole.size();
  return count;
}

/// Every rectangle test and every overlap test costs by the corner; traced outlines have hundreds,
/// most of which matter less than the blade's width.
geometry::Polygon with_few_corners(const geometry::Polygon& piece, double size_cm) {
  geometry::Polygon result = piece;
  for (double most = size_cm / 1000; most < size_cm / 90 && corner_count(result) > few_corners;
       most *= 1.8) {
    result = simplify_outwards(piece, most);
  }
  return result;
}

geometry::Polygon about(Point reference, geometry::Polygon piece) {
  for (auto& p : piece.outer) p = p - reference;
  for (auto& hole : piece.holes) {
    for (auto& p : hole) p = p - reference;
  }
  return piece;
}

/// @param simple the piece or what covers it, about the reference
StandIn stand_in_of(const geometry::Polygon& piece, Point reference,
                    const geometry::Polygon& simple, std::vector<Convex> parts) {
  StandIn result;
  result.area_cm2 = geometry::area(piece);
  result.reference = reference;
  result.cover = simple;
  result.parts = std::move(parts);
  result.hull = geometry::convex_hull(simple.outer);
  for (const auto& p : result.hull) {
    result.reach_cm = std::max(result.reach_cm, geometry::norm(p));
  }
  return result;
}

Point middle(const geometry::Polygon& piece) {
  const Box box = geometry::bounding_box(piece.outer);
  return 0.5 * (box.low + box.high);
}

double size_of(const geometry::Polygon& piece) {
  const Box box = geometry::bounding_box(piece.outer);
  return std::hypot(box.width(), box.height()) / 2;
}

}  // namespace

StandIn make_stand_in(const geometry::Polygon& piece) {
  const auto simple = with_few_corners(about(middle(piece), piece), size_of(piece));
  return stand_in_of(piece, middle(piece), simple, convex_parts(simple));
}

StandIn make_exact_stand_in(const geometry::Polygon& piece) {
  const auto exact = about(middle(piece), piece);
  return stand_in_of(piece, middle(piece), exact, convex_parts(exact));
}

// Its rows are laid by the whole hull, so that what fits exactly still does; only what is left of
// the sheet is measured beside fewer corners.
StandIn make_hull_stand_in(const geometry::Polygon& piece) {
  const auto moved = about(middle(piece), piece);
  const Convex hull = convex_hull_of(moved);
  StandIn result = stand_in_of(piece, middle(piece), {hull.corners, {}}, {hull});
  result.cover = with_few_corners(result.cover, size_of(piece));
  return result;
}

}  // namespace drapewright::cutting
