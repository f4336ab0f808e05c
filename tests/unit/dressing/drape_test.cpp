#include <gtest/gtest.h>

#include <cmath>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

// Steiner: area grown by m is A + P m + pi m2 (calculated: 164.454 at 4 cm, 213.421 at 5 cm for
// the 8 x 5 ellipse; 201.062 for a circle of 6 cm grown by 5).
TEST(Film, HasTheAreaOfSteinersFormula) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  EXPECT_NEAR(plan_dressing(value).drapes[0].area_cm2, 213.421, 0.25);
  EXPECT_GE(plan_dressing(value).drapes[0].area_cm2, 213.42);
  value.dressing.border_cm = 4;
  EXPECT_NEAR(plan_dressing(value).drapes[0].area_cm2, 164.454, 0.2);
  EXPECT_NEAR(plan_dressing(case_of(geometry::circle(6))).drapes[0].area_cm2, 201.062, 0.25);
}

// "sheets that just hold it 16 x 13 and 18 x 15 cm" (calculated).
TEST(FilmSheet, ThatJustHoldsItIsTaken) {
  wound::Case value = case_of(geometry::rectangle(8, 5, {1, 2}, 33));
  value.supplies = supplies::StockList{
      {.item = "exact", .kind = supplies::Kind::film_sheet, .length_cm = 18, .width_cm = 15}};
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.drapes[0].sheets.size(), 1u);
  EXPECT_NEAR(std::fmod(plan.drapes[0].sheets[0].place.angle_deg, 180), 33, 0.01);
  EXPECT_NEAR(plan.drapes[0].sheets[0].place.length_cm, 18, 1e-9);
  (*value.supplies)[0].width_cm = 14.98;
  (*value.supplies)[0].available = 1;
  const Plan too_small = plan_dressing(value);
  EXPECT_TRUE(too_small.drapes[0].sheets.empty());
  EXPECT_NE(finding(too_small, "film-sheets-lacking"), nullptr);
}

TEST(FilmSheet, IsTheCheapestThatHolds) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  const auto film = [](const char* item, double side, double cost) {
    return supplies::StockItem{.item = item,
                               .kind = supplies::Kind::film_sheet,
                               .length_cm = side,
                               .width_cm = side,
                               .unit_cost = cost};
  };
  value.supplies =
      supplies::StockList{film("small", 10, 1), film("dear", 20, 9), film("cheap", 40, 5)};
  EXPECT_EQ(plan_dressing(value).drapes[0].sheets.at(0).item, "cheap");
  (*value.supplies)[2].available = 0;
  EXPECT_EQ(plan_dressing(value).drapes[0].sheets.at(0).item, "dear");
}

TEST(FilmSheet, LastOneOnTheShelfIsNotUsedTwice) {
  wound::Case value = case_of(geometry::circle(4));
  add_wound(value, "B", geometry::circle(4, {60, 0}));
  value.supplies = supplies::StockList{{.item = "only one",
                                        .kind = supplies::Kind::film_sheet,
                                        .length_cm = 20,
                                        .width_cm = 20,
                                        .available = 1}};
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.drapes.size(), 2u);
  EXPECT_EQ(plan.drapes[0].sheets.size(), 1u);
  EXPECT_TRUE(plan.drapes[1].sheets.empty());
}

TEST(Groups, ShareAFilmExactlyWhenTheirFilmsOverlap) {
  for (const double gap : {9.9, 10.1}) {
    wound::Case value = case_of(geometry::rectangle(4, 4));
    add_wound(value, "B", geometry::rectangle(4, 4, {4 + gap, 0}));
    EXPECT_EQ(plan_dressing(value).drapes.size(), gap < 10 ? 1u : 2u) << gap;
  }
}

TEST(Groups, ChainThroughTheirNeighbours) {
  wound::Case value = case_of(geometry::circle(3));
  add_wound(value, "B", geometry::circle(3, {24, 0}));
  add_wound(value, "C", geometry::circle(3, {12, 0}));
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.drapes.size(), 1u);
  EXPECT_EQ(plan.drapes[0].wounds, (std::vector<std::string>{"A", "B", "C"}));
}

wound::Case beside_zone(double gap_cm) {
  wound::Case value = case_of(geometry::rectangle(6, 6));
  value.current().skin_zones.push_back(
      {.outline_cm = geometry::rectangle(10, 40, {3 + gap_cm + 5, 0})});
  return value;
}

TEST(Border, IsWhatTheZoneLeaves) {
  const Plan plan = plan_dressing(beside_zone(2.5));
  const Drape& drape = plan.drapes[0];
  EXPECT_NEAR(drape.least_border.value, 2.5, 1e-3);
  EXPECT_NEAR(drape.border_by_clock_cm[2], 2.5, 1e-3) << "3 o'clock faces the zone";
  EXPECT_NEAR(drape.border_by_clock_cm[8], 5, 1e-9) << "9 o'clock does not";
  const Finding* short_border = finding(plan, "border-short");
  ASSERT_NE(short_border, nullptr);
  EXPECT_EQ(short_border->severity, Severity::warning);
  EXPECT_NE(short_border->text.find("2.50 cm"), std::string::npos) << short_border->text;
  for (const double cm : drape.border_by_clock_cm) EXPECT_GE(cm, drape.least_border.value);
}

TEST(Border, OfFourAndAHalfIsOnlyANote) {
  const Plan plan = plan_dressing(beside_zone(4.5));
  ASSERT_NE(finding(plan, "border-short"), nullptr);
  EXPECT_EQ(finding(plan, "border-short")->severity, Severity::note);
}

TEST(Border, IsWholeWhereTheZoneIsFar) {
  const Plan plan = plan_dressing(beside_zone(5.5));
  EXPECT_EQ(plan.drapes[0].least_border.value, 5);
  EXPECT_EQ(finding(plan, "border-short"), nullptr);
  EXPECT_FALSE(plan.drapes[0].least_border_line.has_value());
}

TEST(Border, IsNoneWhereTheZoneReachesTheWound) {
  const Plan plan = plan_dressing(beside_zone(-0.5));
  EXPECT_EQ(plan.drapes[0].least_border.value, 0);
  ASSERT_NE(finding(plan, "no-border"), nullptr);
  EXPECT_EQ(finding(plan, "no-border")->severity, Severity::stop);
}

TEST(Film, KeepsClearOfTheZone) {
  const Plan plan = plan_dressing(beside_zone(2.5));
  const Drape& drape = plan.drapes[0];
  for (const geometry::Point& p : geometry::outer_points(drape.outline_cm)) {
    EXPECT_LE(p.x, 5.5 + 1e-4);
  }
  EXPECT_LT(drape.area_cm2, geometry::area(drape.required_outline_cm));
}

TEST(Film, ThatFallsApartIsReported) {
  wound::Case value = case_of(geometry::rectangle(6, 6));
  value.current().skin_zones.push_back({.outline_cm = geometry::rectangle(1, 60, {5, 0})});
  EXPECT_NE(finding(plan_dressing(value), "film-in-parts"), nullptr);
}

}  // namespace
}  // namespace drapewright::dressing
