#include "core/forecast/course.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/base/error.h"
#include "tests/unit/forecast/cases.h"

namespace drapewright::forecast {
namespace {

using tests::certain;

int total(const std::vector<Use>& uses) {
  return std::accumulate(uses.begin(), uses.end(), 0,
                         [](int so_far, const Use& use) { return so_far + use.quantity; });
}

Course course(wound::DressingSettings dressing = {}, const Settings& settings = certain(),
              int start = 0) {
  return Course(start, 24.0 * start, dressing, settings);
}

// 14 days at 72 h: ceil(4.67) = 5 applications; at 48 h: 7. Calculated.
TEST(Course, IsChangedAsOftenAsItsIntervalSays) {
  EXPECT_EQ(course().changes(), (std::vector{0, 3, 6, 9, 12}));
  EXPECT_EQ(course({.change_every_h = 48}).changes().size(), 7u);
  EXPECT_EQ(course({.change_every_h = 8, .course_days = 1}).changes(), (std::vector{0, 0, 0}));
  EXPECT_EQ(course({.change_every_h = 6, .course_days = 0.5}).changes(), (std::vector{0, 0}));
}

TEST(Course, ThatIsExtendedGoesOnWithTheSameInterval) {
  Settings settings = certain();
  settings.extension_share = 0.25;
  settings.extension_days = 7;
  const Course extended = course({}, settings);
  EXPECT_EQ(extended.changes(), (std::vector{0, 3, 6, 9, 12, 15, 18}));
  ASSERT_EQ(extended.ends().size(), 2u);
  EXPECT_EQ(extended.ends()[0], (CourseEnd{14, 0.75}));
  EXPECT_EQ(extended.ends()[1], (CourseEnd{21, 0.25}));
}

TEST(Course, EndsEarlyWithTheChanceOfAWeek) {
  Settings settings = certain();
  settings.early_end_per_week = 0.1;
  const auto ends = course({}, settings).ends();
  double total = 0, in_first_week = 0;
  for (const CourseEnd& end : ends) {
    total += end.share;
    if (end.day <= 7) in_first_week += end.share;
  }
  EXPECT_NEAR(total, 1, 1e-14);
  EXPECT_NEAR(in_first_week, 0.1, 1e-14);
  EXPECT_NEAR(ends.back().share, std::pow(0.9, 13.0 / 7), 1e-14);  // stays on for 13 nights
}

// 8 x 5 ellipse at 1.3 mL/cm2: 40.8 mL a day, 572 over 14 days: two of 300 mL, by the week as well.
// At 100 mL a day one of 300 mL is full in three days. Calculated.
TEST(Course, ChangesACanisterWhenFullAndAtLeastWeekly) {
  const auto uses = [](double ml_per_day) { return course().canisters(ml_per_day, 300, 7, 0); };
  EXPECT_EQ(uses(0), (std::vector<Use>{{0, 1}, {7, 1}}));
  EXPECT_EQ(total(uses(40.8)), 2);
  EXPECT_EQ(uses(100), (std::vector<Use>{{0, 1}, {3, 1}, {6, 1}, {9, 1}, {12, 1}}));
  EXPECT_EQ(uses(600).front(), (Use{0, 2}));
}

TEST(Course, TakesFewerCanistersOfAFluidThatDeclines) {
  // 100 mL a day halving every week: 100 / (ln 2 / 7) x (1 - 2^-2) = 757 mL in 14 days.
  const auto halving = course().canisters(100, 100, 7, -0.5);
  EXPECT_EQ(total(halving), 8);
  EXPECT_EQ(total(course().canisters(100, 100, 7, 0)), 14);
  EXPECT_GT(total(course().canisters(100, 100, 7, 0.5)), 14);
}

TEST(Course, ThatRunsCountsOnlyWhatIsToCome) {
  const Course running = course({}, certain(), -5);
  EXPECT_EQ(running.planned_end(), 9);
  EXPECT_EQ(running.canisters(0, 300, 7, 0), (std::vector<Use>{{2, 1}}));
  EXPECT_EQ(running.every(7, 2), (std::vector<Use>{{2, 2}}));
}

TEST(Course, RefusesACanisterThatIsFullAtOnce) {
  EXPECT_THROW(course().canisters(5000, 1, 7, 0), InputError);
  EXPECT_THROW(course({.change_every_h = 1e-6}), InputError);
}

}  // namespace
}  // namespace drapewright::forecast
