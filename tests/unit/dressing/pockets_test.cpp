#include "core/dressing/pockets.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/geometry/clock.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

/// A round wound of 3 cm radius, 2 cm deep, undermined by 2 cm.
wound::Case undermined(double from_clock, double to_clock) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().wounds[0].depth_cm = 2;
  value.current().wounds[0].undermining = {
      {.from_clock = from_clock, .to_clock = to_clock, .extent_cm = 2}};
  return value;
}

Pocket pocket_of(const wound::Case& value) {
  FindingList findings;
  const auto prepared = prepare_wounds(value.current(), findings);
  return pockets_of(prepared.front(), value.head_direction_deg).value().front();
}

// A sector of a ring from radius 3 to 5.
TEST(Pocket, HasTheAreaOfItsSector) {
  for (const auto& [from, to, hours] :
       {std::tuple{2.0, 5.0, 3.0}, {11.0, 1.0, 2.0}, {10.5, 4.5, 6.0}, {1.0, 12.0, 11.0}}) {
    const double expected = hours / 12 * geometry::pi * (25 - 9);
    EXPECT_NEAR(geometry::area(pocket_of(undermined(from, to)).region), expected, 0.12)
        << from << " to " << to;
  }
}

TEST(Pocket, AllRoundIsAWholeRing) {
  EXPECT_NEAR(geometry::area(pocket_of(undermined(12, 12)).region), geometry::pi * 16, 0.2);
}

TEST(Pocket, ThatPassesTwelveLiesToTheHead) {
  for (const geometry::Point& p : geometry::outer_points(pocket_of(undermined(11, 1)).region)) {
    EXPECT_GT(p.y, 2);
  }
}

TEST(LowestLayer, ReachesIntoThePocketLessTheInset) {
  const Plan plan = plan_dressing(undermined(2, 4));
  const Layer& layer = plan.fill.layers.back();
  ASSERT_TRUE(layer.reaches_into_pockets);
  EXPECT_TRUE(geometry::contains(layer.pieces, {4.6, 0})) << "3 o'clock, 0.4 cm from the end";
  EXPECT_FALSE(geometry::contains(layer.pieces, {4.8, 0}));
  EXPECT_FALSE(geometry::contains(layer.pieces, {-3.0, 0})) << "no pocket at 9 o'clock";
  EXPECT_NEAR(plan.wounds[0].pocket_volume_cm3, 2.0 / 12 * geometry::pi * 16 * 2, 0.2);
}

TEST(LowestLayer, LeavesTheTopLayerInTheOpening) {
  wound::Case value = undermined(2, 4);
  value.current().wounds[0].depth_cm = 4;
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.fill.layers.size(), 2u);
  EXPECT_FALSE(plan.fill.layers[0].reaches_into_pockets);
  EXPECT_TRUE(plan.fill.layers[1].reaches_into_pockets);
  EXPECT_GT(geometry::area(plan.fill.layers[1].pieces), geometry::area(plan.fill.layers[0].pieces));
}

TEST(LowestLayer, KeepsThePortOverTheOpening) {
  const Plan plan = plan_dressing(undermined(2, 4));
  const Port& port = plan.drapes[0].port;
  EXPECT_LE(norm(*port.centre_cm) + port.aperture_diameter_cm / 2, 3) << "not under the skin";
}

TEST(LowestLayer, WiderThanTheOpeningIsReported) {
  wound::Case value = case_of(geometry::ellipse(4, 3));
  value.current().wounds[0].undermining = {{.from_clock = 12, .to_clock = 12, .extent_cm = 3}};
  EXPECT_NE(finding(plan_dressing(value), "piece-wider-than-opening"), nullptr);
  EXPECT_EQ(finding(plan_dressing(undermined(2, 4)), "piece-wider-than-opening"), nullptr);
}

// A thin deep pocket beside a bed that the wall has narrowed: the wedge is wide enough for filler
// only under the skin.
TEST(LowestLayer, InAPocketApartFromTheOpeningIsReported) {
  wound::Case value = case_of(geometry::circle(3));
  value.current().wounds[0].depth_cm = 2;
  value.current().wounds[0].wall_run_in_cm = 0.5;
  value.current().wounds[0].undermining = {{.from_clock = 3, .to_clock = 3.6, .extent_cm = 6}};
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.fill.layers.back().pieces.size(), 2u);
  const Finding* hidden = finding(plan, "piece-out-of-sight");
  ASSERT_NE(hidden, nullptr);
  EXPECT_GT(norm(hidden->where_cm.value()), 1.5) << "under the skin";
  EXPECT_EQ(finding(plan_dressing(undermined(2, 4)), "piece-out-of-sight"), nullptr);
}

TEST(Tunnel, ThatIsExploredTakesAStripOfItsOwn) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().wounds[0].tunnels = {{.clock = 2, .length_cm = 3, .explored = true},
                                       {.clock = 6, .length_cm = 2}};
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.fill.strips.size(), 1u) << "none into the unexplored one";
  EXPECT_NEAR(plan.fill.strips[0].length_cm, 6, 1e-9) << "3 cm of it stay in reach";
  EXPECT_EQ(plan.fill.piece_count, 2);
  EXPECT_NE(finding(plan, "tunnel-strip"), nullptr);
  EXPECT_NE(finding(plan, "tunnel-unexplored"), nullptr);
}

// Two discs of 3 cm joined by a corridor 0.9 cm wide: 0.3 cm of filler in it.
TEST(Neck, LikelyToTearIsReportedWithItsPlace) {
  const std::vector<geometry::Region> parts = {{{geometry::circle(3), {}}},
                                               {{geometry::circle(3, {4, 0}), {}}},
                                               {{geometry::rectangle(4, 0.9, {2, 0}), {}}}};
  const geometry::Region shape = geometry::unite(parts);
  const Plan plan = plan_dressing(case_of(shape.front().outer));
  ASSERT_EQ(plan.fill.layers.at(0).pieces.size(), 1u);
  const Finding* neck = finding(plan, "neck-narrow");
  ASSERT_NE(neck, nullptr);
  EXPECT_NE(neck->text.find("0.30 cm"), std::string::npos) << neck->text;
  EXPECT_NEAR(neck->where_cm->y, 0, 0.05);
  EXPECT_GT(neck->where_cm->x, 1);
  EXPECT_LT(neck->where_cm->x, 3);
  EXPECT_EQ(finding(plan_dressing(case_of(geometry::ellipse(8, 5))), "neck-narrow"), nullptr);
}

// Two ranges that meet at an hour are one pocket there, however the head lies. A seam between them
// would cost the filler twice the inset.
TEST(Pocket, MeetsItsNeighbourWithoutASeam) {
  wound::Case parted = undermined(10, 12), whole = undermined(10, 1.5);
  parted.current().wounds[0].undermining.push_back(
      {.from_clock = 12, .to_clock = 1.5, .extent_cm = 2});
  for (double head_deg = 0; head_deg < 360; head_deg += 7.3) {
    parted.head_direction_deg = whole.head_direction_deg = head_deg;
    const Fill a = plan_dressing(parted).fill, b = plan_dressing(whole).fill;
    EXPECT_EQ(a.piece_count, b.piece_count) << head_deg;
    EXPECT_NEAR(a.area_cm2, b.area_cm2, 0.01) << head_deg;
  }
}

}  // namespace
}  // namespace drapewright::dressing
