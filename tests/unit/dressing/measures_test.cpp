#include <gtest/gtest.h>

#include <cmath>

#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

struct EllipseRow {
  double length_cm, width_cm, depth_cm, product, quarter_pi, edge_length_cm;
};

// The rows of the ellipse table: length x width, pi/4 of it (Postepy Dermatol Alergol
// 2023;40(4):554), edge length calculated.
class EllipseMeasures : public testing::TestWithParam<EllipseRow> {};

TEST_P(EllipseMeasures, AreThoseOfTheFormula) {
  const EllipseRow row = GetParam();
  wound::Case value = case_of(geometry::ellipse(row.length_cm, row.width_cm, {3, -2}, 90));
  value.current().wounds[0].depth_cm = row.depth_cm;
  const Plan plan = plan_dressing(value);
  const WoundMeasures& m = plan.wounds.front();
  EXPECT_NEAR(m.area.value, row.quarter_pi, 1e-4);
  EXPECT_NEAR(m.perimeter.value, row.edge_length_cm, 1e-3);
  EXPECT_NEAR(m.length.value, row.length_cm, 1e-3);
  EXPECT_NEAR(m.width.value, row.width_cm, 1e-3);
  EXPECT_NEAR(m.head_to_foot.value, row.length_cm, 1e-3);
  EXPECT_NEAR(m.side_to_side.value, row.width_cm, 1e-3);
  EXPECT_NEAR(m.rectangle_area_cm2, row.product, 0.01);
  EXPECT_NEAR(m.ellipse_area_cm2, row.quarter_pi, 0.01);
  EXPECT_NEAR(m.volume.value, row.quarter_pi * row.depth_cm, 1e-3);
}

INSTANTIATE_TEST_SUITE_P(Table, EllipseMeasures,
                         testing::Values(EllipseRow{8, 5, 2, 40, 31.4159, 20.69314},
                                         EllipseRow{10, 6, 3, 60, 47.1239, 25.52700},
                                         EllipseRow{4, 2, 0.2, 8, 6.2832, 9.68845}));

// "a 10 cm2 circle at 1 mm: 11.2 %" (calculated: edge length x shift).
TEST(Spread, OfAreaIsEdgeLengthTimesTracingError) {
  const Plan plan = plan_dressing(case_of(geometry::circle(2 * std::sqrt(10 / geometry::pi))));
  EXPECT_NEAR(plan.wounds[0].area.spread / plan.wounds[0].area.value, 0.112, 5e-4);
  EXPECT_DOUBLE_EQ(plan.wounds[0].length.spread, 0.2);
}

TEST(Spread, VanishesWithoutATracingError) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.dressing.tracing_error_mm = 0;
  const Plan plan = plan_dressing(value);
  EXPECT_EQ(plan.wounds[0].area.spread, 0);
  EXPECT_EQ(plan.wounds[0].width.spread, 0);
}

TEST(Measures, TakeIslandsOff) {
  wound::Case value = case_of(geometry::rectangle(10, 6));
  value.current().wounds[0].islands_cm = {geometry::rectangle(2, 1)};
  const Plan plan = plan_dressing(value);
  EXPECT_NEAR(plan.wounds[0].area.value, 58, 1e-6);
  EXPECT_NEAR(plan.wounds[0].perimeter.value, 38, 1e-4);
  EXPECT_NEAR(plan.wounds[0].volume.value, 58 * 1.5, 1e-4);
}

TEST(Measures, FollowTheHeadDirection) {
  wound::Case value = case_of(geometry::rectangle(8, 3));
  value.head_direction_deg = 0;
  const Plan plan = plan_dressing(value);
  EXPECT_NEAR(plan.wounds[0].head_to_foot.value, 8, 1e-5);
  EXPECT_NEAR(plan.wounds[0].side_to_side.value, 3, 1e-5);
}

// Frustum of a cone: pi h / 3 (R2 + R r + r2).
TEST(Volume, UnderASlopingWallIsThatOfAFrustum) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().wounds[0].depth_cm = 2;
  value.current().wounds[0].wall_run_in_cm = 1;
  const Plan plan = plan_dressing(value);
  EXPECT_NEAR(plan.wounds[0].volume.value, geometry::pi * 2 / 3 * (9 + 6 + 4), 0.1);
}

// A wall that meets in the middle: a cone.
TEST(Volume, OfAWallThatClosesIsThatOfACone) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().wounds[0].depth_cm = 3;
  value.current().wounds[0].wall_run_in_cm = 3;
  EXPECT_NEAR(plan_dressing(value).wounds[0].volume.value, geometry::pi * 9, 0.15);
}

TEST(Outline, ThatIsMendedIsSaidToBe) {
  geometry::Ring spiky = geometry::rectangle(6, 4);
  const geometry::Point corner = spiky[1];
  spiky.insert(spiky.begin() + 2, {corner + geometry::Point{2, 0}, corner});
  const Plan plan = plan_dressing(case_of(spiky));
  EXPECT_NEAR(plan.wounds[0].area.value, 24, 1e-3);
  ASSERT_NE(finding(plan, "outline-mended"), nullptr);
}

// A comb of 40 teeth, each 0.1 cm wide: its edge is some ten times that of its hull.
TEST(Spread, LargerThanItsFigureDeservesIsSaid) {
  geometry::Ring comb;
  for (int i = 0; i < 40; ++i) {
    comb.push_back({0.2 * i, 0});
    comb.push_back({0.2 * i, 3});
    comb.push_back({0.2 * i + 0.1, 3});
    comb.push_back({0.2 * i + 0.1, 0});
  }
  comb.push_back({7.9, -0.3});
  comb.push_back({0, -0.3});
  const Plan ragged = plan_dressing(case_of(comb));
  ASSERT_NE(finding(ragged, "spread-large"), nullptr);
  EXPECT_NE(finding(ragged, "spread-large")->text.find("ragged"), std::string::npos);
  EXPECT_EQ(finding(plan_dressing(case_of(geometry::circle(4))), "spread-large"), nullptr);
  const Plan tiny = plan_dressing(case_of(geometry::circle(0.5)));
  ASSERT_NE(finding(tiny, "spread-large"), nullptr);
  EXPECT_NE(finding(tiny, "spread-large")->text.find("small"), std::string::npos);
}

}  // namespace
}  // namespace drapewright::dressing
