// What must hold for the clearance map of any wound, on outlines drawn at random.

#include <gtest/gtest.h>
// rapidcheck's header needs GoogleTest's before it.
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/medial/clearance_map.h"
#include "core/geometry/shapes.h"
#include "tests/support/made_outlines.h"

namespace drapewright::geometry {
namespace {

constexpr double error = tolerance::offset_cm;

/// A star, blob, spiral, comb, staircase or armed blob of 3 to some 2,000 points, 0.5 to 60 cm.
Region any_wound() {
  support::OutlineMaker maker(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000).as("seed"));
  const int size = *rc::gen::inRange(3, 300).as("size");
  switch (*rc::gen::inRange(0, 7).as("kind")) {
    case 0:
      return {{maker.star(size, maker.between(0.25, 30)), {}}};
    case 1:
      return {{maker.blob(size + 5, maker.between(0.25, 25)), {}}};
    case 2:
      return {{maker.spiral(maker.between(0.5, 3), 0.8, 0.3, size + 80), {}}};
    case 3:
      return {{maker.comb(2 + size / 20, maker.between(0.1, 1.5), 0.4, 5), {}}};
    case 4:
      return {{maker.staircase(8 * size, maker.between(0.5, 15)), {}}};
    case 5:
      return {{maker.armed_blob(2, maker.between(0.05, 1), 3), {}}};
    default:
      return {maker.with_island(3, maker.between(0.1, 1), maker.between(0.01, 1))};
  }
}

double inset_area(const ClearanceMap& map, double d) {
  const Offset offset = map.inset(d);
  RC_ASSERT(offset.verified);
  return area(offset.region);
}

double outset_area(const ClearanceMap& map, double d) {
  const Offset offset = map.outset(d);
  RC_ASSERT(offset.verified);
  return area(offset.region);
}

double any_distance() { return 0.001 * *rc::gen::inRange(20, 1500).as("distance, mm/100"); }

/// Equal to within rounding: 1e-9 of the larger, or of the grid's own area.
void require_same(double a, double b) {
  RC_ASSERT(std::abs(a - b) <= 1e-9 * std::max({1.0, std::abs(a), std::abs(b)}));
}

void require_same_answers(const Region& a, const Region& b, double d) {
  const ClearanceMap first(a);
  const ClearanceMap second(b);
  RC_ASSERT(first.sound() && second.sound());
  require_same(inset_area(first, d), inset_area(second, d));
  require_same(outset_area(first, d), outset_area(second, d));
  RC_ASSERT(first.pieces(d) == second.pieces(d));
  require_same(first.largest_circle()->radius_cm, second.largest_circle()->radius_cm);
}

RC_GTEST_PROP(ClearanceMapOfAnyWound, IsSoundAndKeepsItsDistance, ()) {
  const Region region = any_wound();
  const double d = any_distance();
  const ClearanceMap map(region);
  RC_ASSERT(map.sound());
  const EdgeIndex edges(region);
  for (const Offset& offset : {map.inset(d), map.outset(d)}) {
    RC_ASSERT(offset.verified);
    for (const Polygon& polygon : offset.region)
      for (const Point p : polygon.outer) {
        RC_ASSERT(edges.nearest(p).distance_cm >= d);
        RC_ASSERT(edges.nearest(p).distance_cm <= d + error);
      }
  }
}

RC_GTEST_PROP(ClearanceMapOfAnyWound, LargerDistancesNeverLeaveOrNeedLess, ()) {
  const ClearanceMap map(any_wound());
  const double d = any_distance();
  const double more = d + error + any_distance();
  RC_ASSERT(inset_area(map, more) <= inset_area(map, d));
  RC_ASSERT(outset_area(map, more) >= outset_area(map, d));
  RC_ASSERT(map.largest_circle()->radius_cm >= d || inset_area(map, d) == 0);
}

RC_GTEST_PROP(ClearanceMapOfAnyWound, ShiftedOrReorderedIsTheSame, ()) {
  const Region region = any_wound();
  Region other = region;
  Ring& ring = other.front().outer;
  const auto by = *rc::gen::inRange<std::size_t>(0, ring.size());
  std::rotate(ring.begin(), ring.begin() + static_cast<std::ptrdiff_t>(by), ring.end());
  const Point shift{*rc::gen::inRange(-100'000, 100'000) * 0x1p-10,
                    *rc::gen::inRange(-100'000, 100'000) * 0x1p-10};
  require_same_answers(region, moved(other, shift), any_distance());
}

/// A turn rounds every coordinate; a corner that happens to lie half-way between two grid points
/// may then go to the other one. So turned wounds agree to the grid, and mostly to all digits.
RC_GTEST_PROP(ClearanceMapOfAnyWound, TurnedIsTheSameToTheGrid, ()) {
  const Region region = any_wound();
  const Region other = turned(region, *rc::gen::inRange(1, 360), {1, 2});
  const double d = any_distance();
  const ClearanceMap first(region);
  const ClearanceMap second(other);
  const double room = edge_length(region) * 4 * tolerance::thinning_cm + 1e-6;
  RC_ASSERT(std::abs(inset_area(first, d) - inset_area(second, d)) <= room);
  RC_ASSERT(std::abs(first.largest_circle()->radius_cm - second.largest_circle()->radius_cm) <=
            4 * tolerance::thinning_cm);
}

RC_GTEST_PROP(ClearanceMapOfAnyWound, ServedAndUnservedAddUp, ()) {
  const Region region = any_wound();
  const double d = any_distance();
  const ClearanceMap map(region);
  const Unreached unreached = map.unreached(d);
  double sum = 0;
  for (const Arm& arm : unreached.arms) sum += arm.area_cm2;
  require_same(sum, unreached.area_cm2);
  // A point of the filler serves what is near it: filler and unserved parts never overlap, and
  // unserved parts never exceed the wound.
  RC_ASSERT(unreached.area_cm2 + inset_area(map, d) <=
            area(region) + edge_length(region) * tolerance::thinning_cm);
}

}  // namespace
}  // namespace drapewright::geometry
