#include "core/forecast/forecast.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/base/error.h"
#include "tests/unit/forecast/cases.h"

namespace drapewright::forecast {
namespace {

using tests::certain;
using tests::example;
using tests::has_finding;
using tests::patient;

Forecast forecast(const Shelf& stock, const Settings& settings = certain(), int patients = 3) {
  Caseload caseload(settings.new_patients_per_week);
  caseload.add(patient(example(), settings), patients);
  return forecast_of(caseload, {}, stock, settings);
}

const ItemForecast& item(const Forecast& of, const std::string& name) {
  for (const auto& one : of.items) {
    if (one.item == name) return one;
  }
  throw std::logic_error("no item " + name);
}

TEST(Forecast, AddsUpToTheWholeAndToItsCost) {
  const Forecast value = forecast({{.item = "Film", .lots = {{.quantity = 20}}, .unit_cost = 4}});
  EXPECT_EQ(value.patients, 3);
  const ItemForecast& film = item(value, "Film");
  double weeks = 0;
  for (const Band& band : film.weeks) weeks += band.mean;
  EXPECT_NEAR(weeks, film.total.mean, 1e-12);
  EXPECT_EQ(film.total.mean, 15);
  EXPECT_DOUBLE_EQ(film.cost.value(), 60);
  EXPECT_DOUBLE_EQ(value.cost, 60);
  EXPECT_DOUBLE_EQ(value.cost_per_patient, 20);
  EXPECT_TRUE(has_finding(value.findings, "not-on-stock-list"));
  EXPECT_FALSE(item(value, "Port").order);
}

TEST(Forecast, SaysWhatRunsOutAndWhatExpires) {
  Shelf stock{{.item = "Film", .lots = {{.quantity = 2}}},
              {.item = "Port", .lots = {{.quantity = 99, .expires = tests::first_day + 20}}}};
  const Forecast value = forecast(stock);
  EXPECT_TRUE(has_finding(value.findings, "stock-runs-out"));
  EXPECT_TRUE(has_finding(value.findings, "stock-will-expire"));
  stock[0].lots[0].quantity = 99;
  stock[1].lots[0].expires.reset();
  EXPECT_FALSE(has_finding(forecast(stock).findings, "stock-runs-out"));
  EXPECT_FALSE(has_finding(forecast(stock).findings, "stock-will-expire"));
}

TEST(Forecast, SaysTheRunOutDayWithItsSpread) {
  Settings settings = certain();
  settings.extra_dressings_per_week = 2;
  const Shelf stock{{.item = "Film", .lots = {{.quantity = 6}}}};
  const Forecast value = forecast(stock, settings);
  const auto& days = item(value, "Film").shelf->run_out_days;
  ASSERT_EQ(days.size(), 5u);
  ASSERT_LT(days.front(), days.back());
  const auto date = [&](std::size_t i) { return date_of_day(tests::first_day + days[i]); };
  const auto found = std::ranges::find(value.findings, "stock-runs-out", &dressing::Finding::code);
  ASSERT_NE(found, value.findings.end());
  EXPECT_NE(found->text.find("runs out on " + date(2) + " (even odds), from " + date(0) +
                             " (5 %) to " + date(4) + " (95 %)"),
            std::string::npos)
      << found->text;
}

TEST(Forecast, BandsLieInOrder) {
  Settings settings = certain();
  settings.extra_dressings_per_week = 1;
  settings.new_patients_per_week = 2;
  for (const auto& one : forecast({}, settings).items) {
    for (const Band& band : one.weeks) {
      EXPECT_LE(band.low90, band.low50);
      EXPECT_LE(band.low50, band.middle);
      EXPECT_LE(band.middle, band.high50);
      EXPECT_LE(band.high50, band.high90);
    }
  }
}

TEST(Forecast, RefusesSettingsOutOfBounds) {
  const auto with = [](auto change) {
    Settings settings = certain();
    change(settings);
    return settings;
  };
  EXPECT_THROW(check(with([](Settings& s) { s.weeks = 0; })), InputError);
  EXPECT_THROW(check(with([](Settings& s) { s.service_level = 1; })), InputError);
  EXPECT_THROW(check(with([](Settings& s) { s.early_end_per_week = 1; })), InputError);
  EXPECT_THROW(check(with([](Settings& s) { s.fluid_rates.clear(); })), InputError);
}

TEST(Forecast, StartsAStockListWithEveryItemOfTheCatalogue) {
  const Shelf list = stock_template();
  EXPECT_EQ(list.size(),
            supplies::built_in_catalogue().size() + supplies::built_in_sundries().size());
}

}  // namespace
}  // namespace drapewright::forecast
