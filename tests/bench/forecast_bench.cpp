// The forecast of 10 000 patients over 26 weeks from plans already made, and the exact distribution
// of one item's use against a simulation of the same accuracy, in one run.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <random>

#include "core/base/calendar.h"
#include "core/forecast/pattern_use.h"
#include "core/forecast/study.h"

namespace {

using namespace drapewright;
using forecast::Patient;
using forecast::UsePattern;

double seconds() {
  return std::chrono::duration<double>(std::chrono::steady_clock::now().time_since_epoch()).count();
}

dressing::Plan plan_of(const wound::Case& value) {
  using supplies::Kind;
  dressing::Plan plan;
  const double area = value.current().exudate_ml_per_day.value_or(40);
  plan.wounds = {{.id = "A", .area = {area, 0}}};
  plan.consumables = {
      {.item = "Filler", .kind = Kind::filler_sheet, .per_application = 1 + area / 60},
      {.item = "Film", .kind = Kind::film_sheet, .per_application = 1 + area / 120},
      {.item = "Port", .kind = Kind::port, .per_application = 1},
      {.item = "Canister", .kind = Kind::canister, .per_application = 1},
      {.item = "Battery", .kind = Kind::battery, .per_application = 2},
      {.item = "Wipe", .kind = Kind::other, .per_application = 2}};
  return plan;
}

/// Courses of every age, intervals of 48 and 72 h, half of them with a measured flow.
Patient invented_patient(int number, const forecast::Settings& settings) {
  wound::Case value;
  value.label = "invented " + std::to_string(number);
  value.assessments = {{.date = date_of_day(settings.first_day)}};
  value.assessments[0].wounds = {{.id = "A", .outline_cm = {{0, 0}, {8, 0}, {8, 5}, {0, 5}}}};
  if (number % 2 == 0) value.current().exudate_ml_per_day = 5.0 + (number * 37) % 150;
  value.dressing.change_every_h = number % 3 == 0 ? 48 : 72;
  value.applications = {{.date = date_of_day(settings.first_day - number % 14)}};
  return forecast::patient_of(value, settings, plan_of);
}

int simulated(const UsePattern& pattern, int from, int to, std::mt19937_64& random) {
  double left = std::uniform_real_distribution<>()(random);
  int end = pattern.ends.back().day;
  for (const auto& one : pattern.ends) {
    if ((left -= one.share) < 0) {
      end = one.day;
      break;
    }
  }
  int total = 0;
  for (const auto& use : pattern.scenarios.front().uses) {
    if (use.day >= from && use.day < std::min(to, end)) total += use.quantity;
  }
  for (const auto& extra : pattern.extras) {
    const int days = std::min({to, extra.to_day, end}) - std::max(from, extra.from_day);
    if (days <= 0) continue;
    total += extra.quantity * std::poisson_distribution<>(pattern.extras_per_day * days)(random);
  }
  return total;
}

}  // namespace

int main(int count, char** arguments) {
  const int patients = count > 1 ? std::atoi(arguments[1]) : 10000;
  forecast::Settings settings;
  settings.first_day = day_number("2026-03-02").value();
  settings.weeks = 26;
  settings.new_patients_per_week = std::min(1000.0, patients / 10.0);
  forecast::Shelf stock;
  for (const char* item : {"Filler", "Film", "Port", "Canister", "Battery", "Wipe"}) {
    stock.push_back({.item = item, .lots = {{.quantity = 2 * patients}}, .lead_days = 5});
  }
  forecast::Study study(settings, stock);
  std::vector<UsePattern> ports;
  double began = seconds();
  for (int i = 0; i < patients; ++i) {
    const Patient patient = invented_patient(i, settings);
    study.add("", patient);
    for (const auto& use : patient.items) {
      if (use.item == "Port") ports.push_back(use.pattern);
    }
  }
  std::printf("%d patients read from plans: %.2f s\n", patients, seconds() - began);
  began = seconds();
  const auto result = study.forecast();
  std::printf("26 weeks, %zu items, shelf and orders: %.2f s\n", result.items.size(),
              seconds() - began);

  forecast::Caseload now;
  for (int i = 0; i < patients; ++i) now.add(invented_patient(i, settings));
  began = seconds();
  const auto& exact = now.use("Port", 0, 7);
  const double exact_s = seconds() - began;
  std::mt19937_64 random(1);
  constexpr int runs = 50;
  began = seconds();
  double mean = 0;
  for (int run = 0; run < runs; ++run) {
    for (const auto& pattern : ports) mean += simulated(pattern, 0, 7, random) / double{runs};
  }
  const double each_s = (seconds() - began) / runs;
  // A chance of 95 % to 0.1 % with one standard error takes this many runs.
  constexpr double needed = 0.95 * 0.05 / (0.001 * 0.001);
  std::printf(
      "one item, one week: exact %.4f s (mean %.1f); simulated mean %.1f, %.4f s a run,\n"
      "for a 95 %% chance within 0.1 %%: %.0f runs, %.0f s: exact is %.0f times faster\n",
      exact_s, exact.mean(), mean, each_s, needed, needed * each_s, needed * each_s / exact_s);
  return 0;
}
