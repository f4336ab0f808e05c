// Offsets, circles and unserved areas beside GEOS (through its C interface), on generated outlines
// of every kind that has broken an offset. Bounds follow from the error that was asked for: an
// inset lies between the true ones at d and at d + error, an outset likewise.

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <string>

#include "core/geometry/measures.h"
#include "core/geometry/medial/clearance_map.h"
#include "core/geometry/shapes.h"
#include "core/geometry/validity.h"
#include "tests/support/geos_shape.h"
#include "tests/support/made_outlines.h"

namespace drapewright::geometry {
namespace {

using support::GeosShape;
using support::OutlineMaker;

constexpr double error = tolerance::offset_cm;
constexpr int chords = 64;  ///< of GEOS, to a quarter circle

/// How much GEOS's own chords may change an area: their sag along the whole curve.
double chord_area(double length, double d) {
  return length * d * (1 - std::cos(pi / 4 / chords)) + 1e-6;
}

struct Kind {
  std::string name;
  std::function<Region(OutlineMaker&)> make;
};

Region alone(Ring ring) { return {{std::move(ring), {}}}; }

std::vector<Kind> kinds() {
  return {
      {"star", [](auto& m) { return alone(m.star(m.whole(3, 40), m.between(0.5, 15))); }},
      {"blob", [](auto& m) { return alone(m.blob(m.whole(10, 300), m.between(0.5, 15))); }},
      {"spiral",
       [](auto& m) {
         return alone(m.spiral(m.between(0.5, 3), m.between(0.3, 1.5), m.between(0.05, 1), 80));
       }},
      {"comb",
       [](auto& m) {
         return alone(m.comb(m.whole(2, 15), m.between(0.1, 1.5), m.between(0.05, 1), 4));
       }},
      {"staircase", [](auto& m) { return alone(m.staircase(m.whole(20, 400), 3)); }},
      {"skyline", [](auto& m) { return alone(m.skyline(m.whole(2, 40), 0.2)); }},
      {"armed",
       [](auto& m) { return alone(m.armed_blob(2, m.between(0.05, 1.2), m.between(0.5, 4))); }},
      {"corridor", [](auto& m) { return alone(turned(m.dumbbell(2, 0.6, 1), m.between(0, 90))); }},
      {"island",
       [](auto& m) { return Region{m.with_island(3, m.between(0.1, 1), m.between(0.01, 1))}; }},
      {"far away",
       [](auto& m) {
         return moved(alone(m.blob(60, 3)), {m.between(-1e5, 1e5), 7e4});
       }},
      {"dense", [](auto& m) { return alone(m.blob(3000, m.between(1, 10))); }},
  };
}

class BesideGeos : public ::testing::TestWithParam<Kind> {};

void expect_offset(const Offset& offset, const Region& region, double d, bool outward) {
  ASSERT_TRUE(offset.verified) << offset.doubt;
  const GeosShape given(region);
  const GeosShape mine(offset.region);
  ASSERT_TRUE(mine.is_valid());
  const double sign = outward ? 1 : -1;
  const GeosShape near = given.buffered(sign * d, chords);
  const GeosShape far = given.buffered(sign * (d + error), chords);
  const double slack = chord_area(far.edge_length() + near.edge_length(), d);
  EXPECT_LE(sign * near.area(), sign * mine.area() + slack);
  EXPECT_LE(sign * mine.area(), sign * far.area() + slack);
  if (!mine.is_empty()) {
    EXPECT_GE(mine.edges().distance(given.edges()), d - 1e-9);
  }
}

TEST_P(BesideGeos, OffsetsLieBetweenTheTrueOnes) {
  OutlineMaker maker(101);
  int tried = 0;
  for (int i = 0; i < 25; ++i) {
    const Region region = GetParam().make(maker);
    if (!GeosShape(region).is_valid()) continue;  // a skyline that touches itself
    ++tried;
    const ClearanceMap map(region);
    for (const double d : {0.05, 0.1, 0.3, 0.5, 1.2}) {
      SCOPED_TRACE(GetParam().name + " " + std::to_string(i) + " at " + std::to_string(d));
      expect_offset(map.inset(d), region, d, false);
      EXPECT_EQ(map.inset(d).region.size(), static_cast<std::size_t>(map.pieces(d)));
    }
    for (const double d : {0.1, 0.5, 4.0, 5.0}) {
      SCOPED_TRACE(GetParam().name + " " + std::to_string(i) + " out " + std::to_string(d));
      expect_offset(map.outset(d), region, d, true);
    }
  }
  EXPECT_GE(tried, 20);
}

TEST_P(BesideGeos, LargestCircleIsAsLarge) {
  OutlineMaker maker(102);
  for (int i = 0; i < 25; ++i) {
    const Region region = GetParam().make(maker);
    const GeosShape given(region);
    if (!given.is_valid()) continue;
    const ClearanceMap map(region);
    const Circle circle = map.largest_circle().value();
    const double radius = given.inscribed_radius(1e-4);
    EXPECT_GE(circle.radius_cm, radius - 2 * map.stray_cm() - 1e-9);
    EXPECT_LE(circle.radius_cm, radius + 1e-4);
    EXPECT_NEAR(given.edges().distance(GeosShape(circle.centre)), circle.radius_cm, 1e-9);
  }
}

TEST_P(BesideGeos, UnservedIsWhatTheInsetDoesNotReach) {
  OutlineMaker maker(103);
  constexpr double band = 0.05;
  for (int i = 0; i < 25; ++i) {
    const Region region = GetParam().make(maker);
    const GeosShape given(region);
    if (!given.is_valid()) continue;
    const ClearanceMap map(region);
    for (const double d : {0.1, 0.3, 0.5}) {
      SCOPED_TRACE(GetParam().name + " " + std::to_string(i) + " at " + std::to_string(d));
      const Unreached unreached = map.unreached(d, band);
      const GeosShape filler(map.inset(d).region);
      const GeosShape unserved = given - filler.buffered(d + band, chords);
      // Never less; more by the error along its edge, and where filler would serve through skin.
      EXPECT_GE(unreached.area_cm2, unserved.area() - chord_area(unserved.edge_length(), d) -
                                        1e-3 * unserved.edge_length());
      for (const Arm& arm : unreached.arms) {
        const GeosShape shape(arm.region);
        ASSERT_TRUE(shape.is_valid());
        EXPECT_LE((shape - given).area(), 2e-3 * shape.edge_length());
        EXPECT_LE(arm.width_cm, 2 * (d + error));
        // Well inside what is said to be unserved, no filler is within reach, but through skin.
        const GeosShape core = shape.buffered(-2 * error, 8);
        if (!core.is_empty() && !filler.is_empty()) {
          EXPECT_GE(core.distance(filler), d - error);
        }
      }
    }
  }
}

TEST_P(BesideGeos, NecksPartWhatTheySay) {
  OutlineMaker maker(104);
  for (int i = 0; i < 25; ++i) {
    const Region region = GetParam().make(maker);
    const GeosShape given(region);
    if (!given.is_valid()) continue;
    const ClearanceMap map(region);
    for (const Neck& neck : map.necks(1)) {
      SCOPED_TRACE(GetParam().name + " " + std::to_string(i));
      const double across = distance(neck.across.from, neck.across.to);
      EXPECT_LE(across, neck.width_cm + 4 * map.stray_cm() + 1e-9);
      EXPECT_LE(neck.lobe_area_cm2, 0.5 * given.area() + 1e-3);
      EXPECT_GE(neck.lobe_width_cm, neck.width_cm);
      EXPECT_GT(neck.lobe_area_cm2, 0);
      // Its ends lie on the edge.
      EXPECT_LE(given.edges().distance(GeosShape(neck.across.from)), map.stray_cm() + 1e-9);
      EXPECT_LE(given.edges().distance(GeosShape(neck.across.to)), map.stray_cm() + 1e-9);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Kinds, BesideGeos, ::testing::ValuesIn(kinds()), [](const auto& kind) {
  std::string name = kind.param.name;
  std::erase(name, ' ');
  return name;
});

TEST(BesideGeosTogether, SeveralWoundsGrowAsOne) {
  OutlineMaker maker(105);
  for (int i = 0; i < 20; ++i) {
    Region region;
    for (int k = 0; k < 5; ++k)
      region.push_back({moved(maker.blob(40, 1.5), {6.0 * k, maker.between(-2, 2)}), {}});
    const ClearanceMap map(region);
    for (const double d : {0.5, 1.5, 2.5, 5.0}) {
      SCOPED_TRACE(std::to_string(i) + " out " + std::to_string(d));
      expect_offset(map.outset(d), region, d, true);
      expect_offset(map.inset(0.2 * d), region, 0.2 * d, false);
    }
  }
}

}  // namespace
}  // namespace drapewright::geometry
