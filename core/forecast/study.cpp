#include "core/forecast/study.h"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "core/forecast/pattern_use.h"

namespace drapewright::forecast {
namespace {

std::map<std::string, double> costs_of(const Shelf& stock) {
  std::map<std::string, double> costs;
  if (stock.empty()) {
    for (const auto& item : supplies::built_in_catalogue()) {
      costs[item.item] = item.unit_cost.value_or(0);
    }
  }
  for (const ShelfItem& item : stock) costs[item.item] = item.unit_cost.value_or(0);
  return costs;
}

}  // namespace

bool concerns_stores(const dressing::Finding& finding) {
  static constexpr std::array<std::string_view, 7> codes{
      "course-over",    "course-not-started",         "change-overdue", "change-not-planned",
      "count-mismatch", "course-days-above-practice", "fluid-estimated"};
  return std::ranges::find(codes, finding.code) != codes.end();
}

Study::Study(Settings settings, Shelf stock)
    : settings_(std::move(settings)),
      stock_(std::move(stock)),
      costs_(costs_of(stock_)),
      caseload_(settings_.new_patients_per_week) {
  check(settings_);
  for (const ShelfItem& item : stock_) check(item);
}

double Study::cost_of(const Patient& patient) const {
  double cost = 0;
  for (const ItemUse& use : patient.items) {
    const auto known = costs_.find(use.item);
    if (known == costs_.end()) continue;
    cost += known->second * mean_use_of(use.pattern, 0, settings_.last_day());
  }
  return cost;
}

void Study::add(const std::string& file, const Patient& patient) {
  caseload_.add(patient);
  recorded_.add(patient);
  PatientSummary row{.file = file,
                     .label = patient.label,
                     .running = patient.running,
                     .start = settings_.first_day + patient.start_day,
                     .end = settings_.first_day + patient.end_day,
                     .next_change = settings_.first_day + patient.next_change_day,
                     .overdue_days = patient.overdue_days,
                     .area_cm2 = patient.area_cm2,
                     .area_change_per_week = patient.area_change_per_week,
                     .change_from_series = patient.change_from_series,
                     .dressings = mean_use_of(patient.dressings, 0, settings_.last_day()),
                     .cost = cost_of(patient)};
  for (const auto& finding : patient.findings) {
    if (finding.severity == dressing::Severity::stop) ++row.stops;
    if (concerns_stores(finding)) row.findings.push_back(finding);
  }
  patients_.push_back(std::move(row));
}

Forecast Study::forecast(const Progress& progress) const {
  return forecast_of(caseload_, recorded_.counted(), stock_, settings_, progress);
}

}  // namespace drapewright::forecast
