#include "core/dressing/course.h"

#include <gtest/gtest.h>

#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

// 14 days at 72 h is ceil(4.67) = 5 applications, at 48 h 7 (calculated).
TEST(Applications, AreRoundedUp) {
  EXPECT_EQ(applications_over(14, 72), 5);
  EXPECT_EQ(applications_over(14, 48), 7);
  EXPECT_EQ(applications_over(1, 72), 1);
  EXPECT_EQ(applications_over(0.3 * 10, 72), 1) << "a rounding error is no application";
}

// "at least 2 canisters by the weekly rule" over 14 days (calculated).
TEST(Canisters, FollowTheWeeklyRuleWhenLittleFlows) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.current().exudate_ml_per_day = 20;
  const Plan plan = plan_dressing(value);
  const Consumable* canister = consumable(plan, supplies::Kind::canister);
  ASSERT_NE(canister, nullptr);
  EXPECT_EQ(canister->per_course, 2);
  EXPECT_FALSE(canister->estimate);
}

TEST(Canisters, FollowTheVolumeWhenMuchFlows) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.current().exudate_ml_per_day = 100;
  const Plan plan = plan_dressing(value);
  EXPECT_EQ(consumable(plan, supplies::Kind::canister)->per_course, 5);  // 1400 / 300
}

// Under therapy 1.3 g/cm2/24 h: 40.8 mL/day and 572 mL over 14 days for the 8 x 5 ellipse
// (rate published, Dealey et al 2006; result calculated).
TEST(Canisters, AreEstimatedByAreaAndSaySo) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.current().exudate_ml_per_day.reset();
  const Plan plan = plan_dressing(value);
  const Consumable* canister = consumable(plan, supplies::Kind::canister);
  EXPECT_TRUE(canister->estimate);
  EXPECT_NE(canister->basis.find("40.8 mL/d"), std::string::npos) << canister->basis;
  EXPECT_NE(canister->basis.find("572 mL"), std::string::npos) << canister->basis;
  EXPECT_NE(finding(plan, "fluid-estimated"), nullptr);
}

TEST(Materials, EachLineSaysWhatItRestsOn) {
  const Plan plan = plan_dressing(case_of(geometry::ellipse(8, 5)));
  EXPECT_GE(plan.consumables.size(), 5u + supplies::built_in_sundries().size());
  for (const Consumable& line : plan.consumables) {
    EXPECT_FALSE(line.basis.empty()) << line.item;
    EXPECT_GT(line.per_course, 0) << line.item;
    EXPECT_GE(line.per_course, line.per_application) << line.item;
  }
}

TEST(Materials, FilmAndPortGoWithEachApplication) {
  const Plan plan = plan_dressing(case_of(geometry::ellipse(8, 5)));
  EXPECT_EQ(plan.applications, 5);
  EXPECT_EQ(consumable(plan, supplies::Kind::film_sheet)->per_course, 5);
  EXPECT_EQ(consumable(plan, supplies::Kind::port)->per_course, 5);
}

TEST(Batteries, AreTwoASet) {
  const Plan plan = plan_dressing(case_of(geometry::ellipse(8, 5)));
  EXPECT_EQ(consumable(plan, supplies::Kind::battery)->per_course, 4);
}

wound::Case with_canisters(int available) {
  wound::Case value = case_of(geometry::circle(5));
  value.supplies = supplies::built_in_catalogue();
  for (supplies::StockItem& item : *value.supplies) {
    if (item.item == "Canister 300 mL") item.available = available;
  }
  return value;
}

// 14 days at 30 mL: 420 mL, so 2 canisters over the course, 1 at hand for this dressing.
TEST(Shelf, IsHeldAgainstTheDressingAndTheCourse) {
  const Plan none = plan_dressing(with_canisters(0));
  ASSERT_NE(finding(none, "stock-short-now"), nullptr);
  EXPECT_EQ(finding(none, "stock-short-course"), nullptr) << "said once";
  const Plan one = plan_dressing(with_canisters(1));
  EXPECT_EQ(finding(one, "stock-short-now"), nullptr);
  ASSERT_NE(finding(one, "stock-short-course"), nullptr);
  const Plan two = plan_dressing(with_canisters(2));
  EXPECT_EQ(finding(two, "stock-short-course"), nullptr);
}

}  // namespace
}  // namespace drapewright::dressing
