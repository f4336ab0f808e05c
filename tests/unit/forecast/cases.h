#pragma once

#include <string>

#include "core/base/calendar.h"
#include "core/dressing/plan.h"
#include "core/forecast/patient.h"

namespace drapewright::forecast::tests {

inline const int first_day = day_number("2026-03-02").value();

/// Nothing is left to chance unless a test says so.
inline Settings certain() {
  Settings settings;
  settings.first_day = first_day;
  settings.extra_dressings_per_week = 0;
  settings.early_end_per_week = 0;
  settings.extension_share = 0;
  settings.fluid_rates = {{0.5, 1}};
  return settings;
}

/// An 8 x 5 cm rectangle, 2 cm deep, 14 days at 72 h; applications on these days.
inline wound::Case example(const std::vector<std::string>& applied = {}) {
  wound::Case value;
  value.label = "invented";
  value.assessments = {
      {.date = "2026-03-02",
       .wounds = {{.id = "A", .outline_cm = {{0, 0}, {8, 0}, {8, 5}, {0, 5}}, .depth_cm = 2}}}};
  for (const auto& date : applied) value.applications.push_back({.date = date, .pieces_placed = 1});
  return value;
}

/// Takes a film, a port, a filler sheet for every 20 cm2 or part of it, and the pump's parts.
inline dressing::Plan small_plan(const wound::Case& value) {
  using supplies::Kind;
  dressing::Plan plan;
  const auto& ring = value.current().wounds.front().outline_cm;
  const double area = (ring[1].x - ring[0].x) * (ring[2].y - ring[1].y);
  plan.wounds = {{.id = "A", .area = {area, 0}}};
  const double sheets = static_cast<double>(static_cast<int>((area - 1e-9) / 20) + 1);
  plan.consumables = {{.item = "Filler", .kind = Kind::filler_sheet, .per_application = sheets},
                      {.item = "Film", .kind = Kind::film_sheet, .per_application = 1},
                      {.item = "Port", .kind = Kind::port, .per_application = 1},
                      {.item = "Canister", .kind = Kind::canister, .per_application = 1},
                      {.item = "Battery", .kind = Kind::battery, .per_application = 2}};
  return plan;
}

inline Patient patient(const wound::Case& value, const Settings& settings = certain()) {
  return patient_of(value, settings, small_plan);
}

inline const ItemUse& use_of_item(const Patient& patient, const std::string& item) {
  for (const ItemUse& use : patient.items) {
    if (use.item == item) return use;
  }
  throw std::logic_error("no item " + item);
}

inline bool has_finding(const std::vector<dressing::Finding>& findings, const std::string& code) {
  for (const auto& finding : findings) {
    if (finding.code == code) return true;
  }
  return false;
}

}  // namespace drapewright::forecast::tests
