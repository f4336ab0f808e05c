#pragma once

#include <algorithm>
#include <string>

#include "core/dressing/plan.h"
#include "core/geometry/shapes.h"
#include "core/wound/case.h"

namespace drapewright::dressing {

/// A reviewed case with one wound of the given outline.
inline wound::Case case_of(geometry::Ring outline) {
  wound::Case value;
  value.label = "Test";
  value.cautions.reviewed = true;
  value.assessments.push_back({.date = "2026-05-04"});
  value.current().wounds.push_back({.id = "A", .outline_cm = std::move(outline)});
  value.current().wounds[0].depth_cm = 1.5;
  value.current().exudate_ml_per_day = 30;
  return value;
}

inline void add_wound(wound::Case& value, std::string id, geometry::Ring outline) {
  value.current().wounds.push_back(
      {.id = std::move(id), .outline_cm = std::move(outline), .depth_cm = 1.5});
}

inline const Finding* finding(const Plan& plan, const std::string& code) {
  const auto found = std::ranges::find(plan.findings, code, &Finding::code);
  return found == plan.findings.end() ? nullptr : &*found;
}

inline const Consumable* consumable(const Plan& plan, supplies::Kind kind) {
  const auto found = std::ranges::find(plan.consumables, kind, &Consumable::kind);
  return found == plan.consumables.end() ? nullptr : &*found;
}

}  // namespace drapewright::dressing
