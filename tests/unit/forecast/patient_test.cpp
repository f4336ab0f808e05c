#include "core/forecast/patient.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/forecast/pattern_use.h"
#include "tests/unit/forecast/cases.h"

namespace drapewright::forecast {
namespace {

using tests::certain;
using tests::example;
using tests::has_finding;
using tests::patient;
using tests::use_of_item;

double expected(const Patient& of, const std::string& item, int from, int to) {
  return use_of(use_of_item(of, item).pattern, from, to).mean();
}

TEST(Patient, WhoStartsNowUsesAWholeCourse) {
  const Patient starts = patient(example());
  EXPECT_EQ(expected(starts, "Film", 0, 56), 5);
  EXPECT_EQ(expected(starts, "Filler", 0, 56), 10);  // 40 cm2: two sheets each time
  EXPECT_EQ(expected(starts, "Canister", 0, 56), 2);
  EXPECT_EQ(expected(starts, "Battery", 0, 56), 4);
  EXPECT_EQ(expected(starts, "Film", 0, 7), 3);
  EXPECT_EQ(expected(starts, "Film", 14, 56), 0);
  EXPECT_TRUE(has_finding(starts.findings, "course-not-started"));
}

TEST(Patient, UnderTherapyUsesWhatIsLeft) {
  const Patient runs = patient(example({"2026-02-24", "2026-02-27"}));
  EXPECT_EQ(runs.start_day, -6);
  EXPECT_EQ(runs.end_day, 8);
  EXPECT_EQ(expected(runs, "Film", 0, 56), 3);  // on days 0, 3 and 6
  EXPECT_EQ(expected(runs, "Canister", 0, 56), 1);
  EXPECT_EQ(runs.overdue_days, 0);
  EXPECT_EQ(runs.past.days, 3);
  EXPECT_EQ(runs.past.recorded, 1);
  EXPECT_DOUBLE_EQ(runs.past.planned, 1);
}

TEST(Patient, WhoseChangeIsOverdueIsChangedFirst) {
  const Patient late = patient(example({"2026-02-25"}));
  EXPECT_EQ(late.overdue_days, 2);
  EXPECT_TRUE(has_finding(late.findings, "change-overdue"));
  EXPECT_EQ(use_of_item(late, "Film").pattern.scenarios[0].uses.front(), (Use{0, 1}));
}

TEST(Patient, WhoseCourseIsOverUsesNothing) {
  const Patient over = patient(example({"2026-02-01"}));
  EXPECT_FALSE(over.running);
  EXPECT_TRUE(over.items.empty());
  EXPECT_TRUE(has_finding(over.findings, "course-over"));
}

TEST(Patient, UsesMoreTheLongerTheCourseAndTheShorterTheInterval) {
  double last = 0;
  for (const double interval : {168.0, 96.0, 72.0, 48.0, 24.0}) {
    wound::Case value = example();
    value.dressing.change_every_h = interval;
    const double now = expected(patient(value), "Film", 0, 56);
    EXPECT_GE(now, last) << interval;
    last = now;
  }
}

// One dressing every 3 days for 14 days, one in twenty courses a week cut short: the closed form.
TEST(Patient, WhoMayEndEarlyFollowsTheClosedForm) {
  Settings settings = certain();
  settings.early_end_per_week = 0.05;
  settings.extra_dressings_per_week = 0.7;
  const Patient value = patient(example(), settings);
  const double stays = std::pow(0.95, 1.0 / 7);
  double changes = 0, days = 1;
  for (const int day : {0, 3, 6, 9, 12}) changes += std::pow(stays, day);
  for (int day = 1; day < 14; ++day) days += std::pow(stays, day);
  EXPECT_NEAR(expected(value, "Film", 0, 56), changes + 0.1 * days, 1e-12);
  EXPECT_NEAR(expected(value, "Filler", 0, 56), 2 * (changes + 0.1 * days), 1e-12);
}

TEST(Patient, IsTheSumOfHisWeeksOnAverageButNotInSpread) {
  Settings settings = certain();
  settings.early_end_per_week = 0.3;
  const UsePattern film = use_of_item(patient(example(), settings), "Film").pattern;
  const Quantity first = use_of(film, 0, 7), second = use_of(film, 7, 14),
                 both = use_of(film, 0, 14);
  EXPECT_NEAR(first.mean() + second.mean(), both.mean(), 1e-13);
  EXPECT_GT(both.variance(), first.variance() + second.variance());  // they end together
}

TEST(Patient, HasTheSameMeanByDistributionAndByDay) {
  Settings settings = certain();
  settings.early_end_per_week = 0.2;
  settings.extension_share = 0.4;
  settings.extra_dressings_per_week = 1.1;
  settings.fluid_rates = {{0.1}, {1.3}, {4}};
  const Patient value = patient(example({"2026-02-26"}), settings);
  for (const ItemUse& use : value.items) {
    for (const auto& [from, to] : {std::pair{0, 56}, {3, 9}, {12, 30}}) {
      EXPECT_NEAR(use_of(use.pattern, from, to).mean(), mean_use_of(use.pattern, from, to), 1e-11)
          << use.item << " " << from;
    }
  }
  EXPECT_NEAR(mean_use_of(value.dressings, 0, 56), expected(value, "Film", 0, 56), 1e-11);
}

TEST(Patient, WithUnmeasuredFluidHasEveryPublishedRate) {
  Settings settings = certain();
  settings.fluid_rates = {{0.1, 1}, {10, 3}};  // 4 and 400 mL a day
  const Patient guessed = patient(example(), settings);
  const Quantity canisters = use_of(use_of_item(guessed, "Canister").pattern, 0, 14);
  EXPECT_NEAR(canisters.chance_of(2), 0.25, 1e-14);
  EXPECT_NEAR(canisters.chance_of(19), 0.75, 1e-14);  // 300 mL last 18 h
  wound::Case measured = example();
  measured.current().exudate_ml_per_day = 4;
  EXPECT_EQ(use_of(use_of_item(patient(measured, settings), "Canister").pattern, 0, 14),
            Quantity::exactly(2));
}

TEST(Patient, WhoseWoundShrinksIsPlannedForEveryApplication) {
  Settings settings = certain();
  settings.area_change_per_week = -0.5;
  const Patient shrinks = patient(example(), settings);
  // 40, 29.7, 22.1, 16.4, 12.2 cm2 on days 0, 3, 6, 9, 12, at 20 cm2 a sheet.
  EXPECT_EQ(expected(shrinks, "Filler", 0, 56), 2 + 2 + 2 + 1 + 1);
  EXPECT_EQ(expected(shrinks, "Film", 0, 56), 5);
}

TEST(AreaChange, NeedsThreeDaysAndFollowsTheSeries) {
  wound::Case value = example();
  EXPECT_FALSE(area_change_of(value));
  const auto smaller = [&](const char* date, double factor) {
    wound::Case later = scaled(value, factor);
    later.current().date = date;
    return later.current();
  };
  value.assessments = {smaller("2026-02-02", 1), smaller("2026-02-09", std::sqrt(0.8))};
  EXPECT_FALSE(area_change_of(value));
  value.assessments.push_back(smaller("2026-02-16", std::sqrt(0.8)));
  value.assessments.back() = smaller("2026-02-09", std::sqrt(0.8));
  EXPECT_FALSE(area_change_of(value));  // two different days
  wound::Case series = example();
  const wound::Case start = series;
  series.assessments.clear();
  for (int week = 0; week < 4; ++week) {
    auto then = scaled(start, std::pow(0.8, week / 2.0)).current();
    then.date = date_of_day(tests::first_day + 7 * week);
    series.assessments.push_back(then);
  }
  EXPECT_NEAR(area_change_of(series).value(), -0.2, 1e-9);
  EXPECT_TRUE(patient(series).change_from_series);
}

TEST(Scaled, KeepsTheCentreAndScalesEveryLength) {
  const wound::Case half = scaled(example(), 0.5);
  const auto& wound = half.current().wounds.front();
  EXPECT_NEAR(wound.outline_cm[0].x, 2, 1e-12);
  EXPECT_NEAR(wound.outline_cm[2].y, 3.75, 1e-12);
  EXPECT_EQ(wound.depth_cm, 1);
}

}  // namespace
}  // namespace drapewright::forecast
