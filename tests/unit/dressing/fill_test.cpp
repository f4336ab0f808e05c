#include <gtest/gtest.h>

#include <cmath>

#include "core/base/tolerances.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

double least_gap(const geometry::Region& pieces, const geometry::Ring& outline) {
  return geometry::gap_between_edges(pieces, {{outline, {}}}).distance_cm;
}

TEST(Fill, OfARectangleIsTheSmallerRectangle) {
  const Plan plan = plan_dressing(case_of(geometry::rectangle(10, 6)));
  ASSERT_EQ(plan.fill.layers.size(), 1u);
  EXPECT_NEAR(plan.fill.area_cm2, 9.4 * 5.4, 29.6 * tolerance::offset_cm);
  EXPECT_LE(plan.fill.area_cm2, 9.4 * 5.4);
  EXPECT_GE(least_gap(plan.fill.layers[0].pieces, geometry::rectangle(10, 6)), 0.3);
  EXPECT_EQ(plan.fill.piece_count, 1);
}

TEST(Fill, GoesDownInSheetsWithAThinnerOneLast) {
  wound::Case value = case_of(geometry::circle(8));
  value.current().wounds[0].depth_cm = 4;
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.fill.layers.size(), 2u);
  EXPECT_DOUBLE_EQ(plan.fill.layers[0].thickness_cm, 3);
  EXPECT_DOUBLE_EQ(plan.fill.layers[1].top_cm, 3);
  EXPECT_DOUBLE_EQ(plan.fill.layers[1].thickness_cm, 1);
  EXPECT_DOUBLE_EQ(plan.fill.layers[1].sheet_thickness_cm, 1.5) << "thinnest that is enough";
  EXPECT_EQ(plan.fill.piece_count, 2);
  EXPECT_NE(finding(plan, "several-pieces"), nullptr);
}

TEST(Fill, DoesNotAddALayerForARoundingError) {
  wound::Case value = case_of(geometry::circle(8));
  value.dressing.filler_thickness_cm = 0.1;
  value.current().wounds[0].depth_cm = 0.3;  // 3 x 0.1 is more than 0.3 in binary
  EXPECT_EQ(plan_dressing(value).fill.layers.size(), 3u);
}

// Layer k of a cone: radius less inset and run-in at its underside.
TEST(Fill, FollowsASlopingWallAtEachUnderside) {
  wound::Case value = case_of(geometry::circle(10));
  value.current().wounds[0].depth_cm = 3;
  value.current().wounds[0].wall_run_in_cm = 1.5;
  value.dressing.filler_thickness_cm = 1.5;
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.fill.layers.size(), 2u);
  for (int i = 0; i < 2; ++i) {
    const double radius = 5 - 0.3 - 1.5 * (i + 1) / 2;
    EXPECT_NEAR(geometry::area(plan.fill.layers[static_cast<std::size_t>(i)].pieces),
                geometry::pi * radius * radius, 2 * geometry::pi * radius * 0.006);
  }
  EXPECT_EQ(finding(plan, "unfilled"), nullptr) << "a slope is not an arm";
}

TEST(Fill, StopsWhereTheWallClosesIn) {
  wound::Case value = case_of(geometry::circle(4));
  value.current().wounds[0].depth_cm = 6;
  value.current().wounds[0].wall_run_in_cm = 2;
  const Plan plan = plan_dressing(value);
  EXPECT_EQ(plan.fill.layers.size(), 1u);
  EXPECT_NE(finding(plan, "layer-vanishes"), nullptr);
}

TEST(Fill, WithoutDepthTakesOneLayerOfTheThinnestSheet) {
  wound::Case value = case_of(geometry::circle(5));
  value.current().wounds[0].depth_cm = 0;
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.fill.layers.size(), 1u);
  EXPECT_DOUBLE_EQ(plan.fill.layers[0].thickness_cm, 1.5);
  EXPECT_NE(finding(plan, "depth-not-given"), nullptr);
}

TEST(Fill, LeavesIslandsClear) {
  wound::Case value = case_of(geometry::rectangle(12, 8));
  const geometry::Ring island = geometry::circle(2);
  value.current().wounds[0].islands_cm = {island};
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.fill.layers[0].pieces.size(), 1u);
  EXPECT_EQ(plan.fill.layers[0].pieces[0].holes.size(), 1u);
  EXPECT_GE(least_gap(plan.fill.layers[0].pieces, island), 0.3);
}

/// A 6 x 6 cm square with an arm 4 cm long and 0.5 cm wide to its right.
geometry::Ring with_arm() {
  return {{0, 0}, {6, 0}, {6, 2}, {10, 2}, {10, 2.5}, {6, 2.5}, {6, 6}, {0, 6}};
}

TEST(Unfilled, ArmIsReportedWithItsAreaAndPlace) {
  const Plan plan = plan_dressing(case_of(with_arm()));
  const Finding* arm = finding(plan, "unfilled");
  ASSERT_NE(arm, nullptr);
  ASSERT_TRUE(arm->where_cm.has_value());
  EXPECT_GT(arm->where_cm->x, 6);
  EXPECT_NEAR(arm->where_cm->y, 2.25, 0.25);
  // The arm less what lies within 0.35 cm of the square's filler, which ends at 5.7.
  EXPECT_NEAR(plan.fill.unfilled_cm2, 0.5 * (10 - 6.05), 0.06);
}

TEST(Unfilled, IsNothingInARoundWound) {
  const Plan plan = plan_dressing(case_of(geometry::circle(6)));
  EXPECT_NEAR(plan.fill.unfilled_cm2, 0, 1e-3);
  EXPECT_EQ(finding(plan, "unfilled"), nullptr);
}

TEST(NoFiller, SaysWhichInsetWouldFitAndPlansTheRest) {
  wound::Case value = case_of(geometry::rectangle(5, 0.8));
  value.dressing.inset_cm = 0.5;
  const Plan plan = plan_dressing(value);
  EXPECT_TRUE(plan.fill.layers.empty());
  EXPECT_NEAR(plan.fill.unfilled_cm2, 4, 1e-4);
  const Finding* stop = finding(plan, "no-filler-fits");
  ASSERT_NE(stop, nullptr);
  EXPECT_EQ(stop->severity, Severity::stop);
  EXPECT_NE(stop->text.find("0.3 cm or less"), std::string::npos) << stop->text;
  value.dressing.inset_cm = 0.3;
  EXPECT_EQ(plan_dressing(value).fill.layers.at(0).pieces.size(), 1u) << "the advised inset fits";
  EXPECT_EQ(plan.drapes.size(), 1u);
  EXPECT_FALSE(plan.consumables.empty());
}

TEST(Pieces, TooSmallToCountSafelyAreReported) {
  // Two squares joined by a channel that the inset closes; the right one leaves 0.6 x 0.6 cm.
  const Plan plan = plan_dressing(case_of({{0, 0},
                                           {5, 0},
                                           {5, 1},
                                           {6, 1},
                                           {6, 0.5},
                                           {7.2, 0.5},
                                           {7.2, 1.7},
                                           {6, 1.7},
                                           {6, 1.4},
                                           {5, 1.4},
                                           {5, 5},
                                           {0, 5}}));
  EXPECT_EQ(plan.fill.layers.at(0).pieces.size(), 2u);
  const Finding* small = finding(plan, "piece-small");
  ASSERT_NE(small, nullptr);
  ASSERT_TRUE(small->where_cm.has_value());
  EXPECT_GT(small->where_cm->x, 6);
}

TEST(Fill, AddsUp) {
  wound::Case value = case_of(with_arm());
  add_wound(value, "B", geometry::ellipse(6, 4, {20, 0}));
  value.current().wounds[1].depth_cm = 5;
  const Plan plan = plan_dressing(value);
  std::size_t pieces = 0;
  double area = 0;
  for (const Layer& layer : plan.fill.layers) {
    pieces += layer.pieces.size();
    area += geometry::area(layer.pieces);
  }
  for (const Drape& drape : plan.drapes) pieces += drape.bridges.size();
  EXPECT_EQ(static_cast<std::size_t>(plan.fill.piece_count), pieces);
  EXPECT_DOUBLE_EQ(plan.fill.area_cm2, area);
}

}  // namespace
}  // namespace drapewright::dressing
