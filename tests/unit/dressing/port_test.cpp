#include <gtest/gtest.h>

#include <array>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

TEST(Port, SitsInTheMiddleOfARoundFiller) {
  const Plan plan = plan_dressing(case_of(geometry::circle(6, {2, 3})));
  const Port& port = plan.drapes[0].port;
  ASSERT_TRUE(port.centre_cm.has_value());
  EXPECT_NEAR(port.centre_cm->x, 2, 0.02);
  EXPECT_NEAR(port.centre_cm->y, 3, 0.02);
  EXPECT_NEAR(port.largest_aperture.value, 5.4, 0.02);
  EXPECT_LE(port.largest_aperture.value, 5.4);
  EXPECT_TRUE(port.fits);
  EXPECT_EQ(port.aperture_limit_cm, 2);
}

TEST(Port, OfATinyWoundSitsOnABridge) {
  const Plan plan = plan_dressing(case_of(geometry::circle(2)));
  const Drape& drape = plan.drapes[0];
  EXPECT_NEAR(drape.port.largest_aperture.value, 1.4, 0.01);
  EXPECT_TRUE(drape.port.on_bridge);
  EXPECT_TRUE(drape.port.fits);
  EXPECT_FALSE(drape.port.fits_on_wound()) << "that is why there is a bridge";
  EXPECT_GE(drape.port.room.value, drape.port.aperture_diameter_cm);
  ASSERT_EQ(drape.bridges.size(), 1u);
  EXPECT_EQ(plan.fill.piece_count, 2) << "a bridge is a piece";
  EXPECT_NE(finding(plan, "port-on-bridge"), nullptr);
}

TEST(Bridge, KeepsItsPadOnSkinAndItsWayShort) {
  const Plan plan = plan_dressing(case_of(geometry::circle(2)));
  const Bridge& bridge = plan.drapes[0].bridges.at(0);
  const geometry::Region wound = {{geometry::circle(2), {}}};
  // Filler ends 0.7 cm from the middle, the pad of 3 cm begins at the edge: its middle lies at 2.5.
  EXPECT_NEAR(bridge.length_cm, 1.8, 0.02);
  const auto pad = geometry::circle(bridge.pad_diameter_cm - 0.02, bridge.line.back());
  EXPECT_FALSE(geometry::overlap({{pad, {}}}, wound));
  EXPECT_TRUE(geometry::subtract({{pad, {}}}, bridge.strip).empty()) << "the pad is part of it";
  // Film within the border of the bridge, film under all of it that lies on skin.
  const geometry::Region bare =
      geometry::subtract(geometry::subtract(bridge.strip, wound), bridge.skin_protection);
  EXPECT_LT(geometry::area(bare), 1e-3);
  EXPECT_NEAR(
      geometry::EdgeIndex(plan.drapes[0].outline_cm).nearest(bridge.line.back()).distance_cm,
      5 + bridge.pad_diameter_cm / 2, 0.02);
}

TEST(Bridge, GoesRoundWhatItMayNotCross) {
  wound::Case value = case_of(geometry::circle(2));
  // A wall of no_film on three sides, open only to the left.
  value.current().skin_zones.push_back(
      {.outline_cm = {{-3, 3}, {4, 3}, {4, -4}, {-3, -4}, {-3, -3}, {3, -3}, {3, 2}, {-3, 2}}});
  const Plan plan = plan_dressing(value);
  ASSERT_TRUE(plan.drapes[0].port.on_bridge);
  const Bridge& bridge = plan.drapes[0].bridges.back();
  const geometry::Region zone = {{value.current().skin_zones[0].outline_cm, {}}};
  EXPECT_LT(geometry::area(geometry::intersect(bridge.strip, zone)), 1e-3);
  EXPECT_GE(geometry::EdgeIndex(zone).nearest(bridge.line.back()).distance_cm, 2.5 - 0.01)
      << "room for the base";
}

TEST(Bridge, ThatIsBarredIsReported) {
  wound::Case value = case_of(geometry::circle(2));
  for (const auto& [x, y, w, h] : {std::array{0.0, 2.5, 40.0, 1.0},
                                   {0.0, -2.5, 40.0, 1.0},
                                   {-20.0, 0.0, 1.0, 6.0},
                                   {20.0, 0.0, 1.0, 6.0}}) {
    value.current().skin_zones.push_back({.outline_cm = geometry::rectangle(w, h, {x, y})});
  }
  const Plan plan = plan_dressing(value);
  EXPECT_FALSE(plan.drapes[0].port.fits);
  EXPECT_NE(finding(plan, "no-way-for-bridge"), nullptr);
  EXPECT_NE(finding(plan, "aperture-off-filler"), nullptr);
}

TEST(Bridge, IsLedWhereTheUserAsksForOne) {
  wound::Case value = case_of(geometry::circle(6));
  EXPECT_FALSE(plan_dressing(value).drapes[0].port.on_bridge);
  value.dressing.bridge_wanted = true;
  EXPECT_TRUE(plan_dressing(value).drapes[0].port.on_bridge);
  EXPECT_TRUE(plan_dressing(value).drapes[0].port.fits_on_wound());
}

TEST(Port, SitsWhereTheUserPutsIt) {
  wound::Case value = case_of(geometry::circle(8));
  value.dressing.port_places_cm = {{1.5, 0}};
  const Port port = plan_dressing(value).drapes[0].port;
  EXPECT_TRUE(port.chosen);
  EXPECT_EQ(*port.centre_cm, (geometry::Point{1.5, 0}));
  EXPECT_NEAR(port.room.value, 2 * (3.7 - 1.5), 0.02);
  EXPECT_TRUE(port.fits);
  value.dressing.port_places_cm = {{3.5, 0}};
  const Plan off = plan_dressing(value);
  EXPECT_FALSE(off.drapes[0].port.fits);
  EXPECT_NE(finding(off, "aperture-off-filler"), nullptr);
  value.dressing.port_places_cm = {{60, 0}};
  EXPECT_FALSE(plan_dressing(value).drapes[0].port.chosen) << "not under this film";
}

TEST(Port, KeepsOutOfNoPortZones) {
  wound::Case value = case_of(geometry::rectangle(10, 6));
  const geometry::Ring zone = geometry::rectangle(6, 8, {2.5, 0});
  value.current().skin_zones.push_back({.kind = wound::ZoneKind::no_port, .outline_cm = zone});
  const Plan plan = plan_dressing(value);
  const Port& port = plan.drapes[0].port;
  ASSERT_TRUE(port.centre_cm.has_value());
  EXPECT_FALSE(geometry::contains(geometry::Polygon{zone, {}}, *port.centre_cm));
  // Filler from -4.7 to the zone's edge at -0.5; the base of 5 cm keeps its middle left of -3.
  EXPECT_NEAR(port.largest_aperture.value, 4.2, 0.02);
  EXPECT_LE(port.centre_cm->x, -3 + 0.01);
  EXPECT_NEAR(port.room.value, 2 * 1.7, 0.03);
}

TEST(Port, LeavesAWoundThatLiesInANoPortZone) {
  wound::Case value = case_of(geometry::circle(5));
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_port, .outline_cm = geometry::circle(8)});
  const Plan plan = plan_dressing(value);
  const Port& port = plan.drapes[0].port;
  ASSERT_TRUE(port.on_bridge);
  EXPECT_EQ(port.largest_aperture.value, 0) << "none on the wound";
  EXPECT_GE(norm(*port.centre_cm), 4 + 2.5 - 0.02) << "the base is clear of the zone";
  EXPECT_NE(finding(plan, "bridge-crosses-zone"), nullptr);
}

TEST(Port, BaseThatReachesIntoAZoneIsReported) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_port, .outline_cm = geometry::rectangle(4, 10, {4, 0})});
  EXPECT_EQ(finding(plan_dressing(value), "base-on-zone"), nullptr) << "a place beside it is left";
  value.dressing.port_places_cm = {{1, 0}};
  EXPECT_NE(finding(plan_dressing(value), "base-on-zone"), nullptr);
}

TEST(Bridge, JoinsWoundsOfOneFilm) {
  wound::Case value = case_of(geometry::circle(5));
  add_wound(value, "B", geometry::circle(4, {8, 0}));
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.drapes.size(), 1u);
  ASSERT_EQ(plan.drapes[0].bridges.size(), 1u);
  EXPECT_NEAR(plan.drapes[0].bridges[0].length_cm, 8 - 2.2 - 1.7, 0.02) << "filler to filler";
  EXPECT_NE(finding(plan, "filler-joined"), nullptr);
  EXPECT_NEAR(plan.drapes[0].port.centre_cm->x, 0, 0.02) << "on the larger one";
  EXPECT_EQ(plan.fill.piece_count, 3);
}

TEST(Bridge, TreeOfFourWoundsHasThreeBridges) {
  wound::Case value = case_of(geometry::circle(4));
  add_wound(value, "B", geometry::circle(4, {7, 0}));
  add_wound(value, "C", geometry::circle(4, {7, 7}));
  add_wound(value, "D", geometry::circle(4, {0, 7}));
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.drapes.size(), 1u);
  EXPECT_EQ(plan.drapes[0].bridges.size(), 3u);
}

TEST(Aperture, OverItsLimitIsAWarning) {
  wound::Case value = case_of(geometry::circle(8));
  value.dressing.aperture_diameter_cm = 2.5;
  const Plan plan = plan_dressing(value);
  ASSERT_NE(finding(plan, "aperture-diameter-above-practice"), nullptr);
  EXPECT_TRUE(plan.drapes[0].port.fits);
}

// The pad of a wide aperture is wider than the port's base.
TEST(Bridge, KeepsAWidePadClearOfZones) {
  wound::Case value = case_of(geometry::circle(4));
  value.dressing.aperture_diameter_cm = 8;
  value.dressing.port_base_diameter_cm = 2;
  const geometry::Ring zone = geometry::circle(1, {4, 0});
  for (const auto kind : {wound::ZoneKind::no_film, wound::ZoneKind::no_port}) {
    value.current().skin_zones = {{.kind = kind, .outline_cm = zone}};
    const Plan plan = plan_dressing(value);
    ASSERT_TRUE(plan.drapes[0].port.on_bridge);
    const Bridge& bridge = plan.drapes[0].bridges.back();
    EXPECT_FALSE(geometry::overlap(bridge.strip, {{zone, {}}}, 1e-3));
  }
}

TEST(Bridge, HasNoFilmUnderItWhereNoneMayBe) {
  wound::Case value = case_of(geometry::circle(2));
  // A crease along the bridge's way, nearer than the margin of the film under it.
  const geometry::Ring crease = geometry::rectangle(8, 0.4, {3, 1.9});
  value.current().skin_zones = {{.outline_cm = crease},
                                {.outline_cm = geometry::rectangle(8, 0.4, {3, -1.9})}};
  const Plan plan = plan_dressing(value);
  ASSERT_FALSE(plan.drapes[0].bridges.empty());
  for (const Bridge& bridge : plan.drapes[0].bridges) {
    EXPECT_FALSE(geometry::overlap(bridge.skin_protection, {{crease, {}}}, 1e-3));
  }
}

// The filler of an hourglass whose waist is undermined on one side is one piece: what of it is seen
// through the opening are two parts that hang together under the skin.
TEST(Bridge, JoinsNoPartsOfOnePiece) {
  const geometry::Ring hourglass = {{-4, -2}, {-0.5, -0.1}, {0.5, -0.1}, {4, -2},
                                    {4, 2},   {0.5, 0.1},   {-0.5, 0.1}, {-4, 2}};
  wound::Case value = case_of(hourglass);
  value.dressing.aperture_diameter_cm = 1;
  value.current().wounds[0].undermining = {{.from_clock = 9.5, .to_clock = 2.5, .extent_cm = 1.5}};
  const Plan plan = plan_dressing(value);
  const geometry::Region& pieces = plan.fill.layers.at(0).pieces;
  ASSERT_EQ(pieces.size(), 1u);
  ASSERT_EQ(geometry::intersect(pieces, {{hourglass, {}}}).size(), 2u);
  EXPECT_TRUE(plan.drapes[0].bridges.empty());
  EXPECT_EQ(plan.fill.piece_count, 1);
}

}  // namespace
}  // namespace drapewright::dressing
