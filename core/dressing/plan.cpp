#include "core/dressing/plan.h"

#include "core/dressing/course.h"
#include "core/dressing/drape.h"
#include "core/dressing/fill.h"
#include "core/dressing/measures.h"
#include "core/dressing/port.h"
#include "core/dressing/prepare.h"
#include "core/dressing/remarks.h"

namespace drapewright::dressing {

Plan plan_dressing(const wound::Case& value, const Progress& progress, const std::string& today) {
  wound::check(value);
  const wound::Assessment& assessment = value.current();
  FindingList findings;
  Plan plan;
  plan.label = value.label;
  plan.date = assessment.date;
  plan.head_direction_deg = value.head_direction_deg;
  plan.tracing_error_cm = value.dressing.tracing_error_mm / 10;
  plan.border_cm = value.dressing.border_cm;
  remark_on_case(value, today, findings);

  progress.at(0.05);
  const std::vector<PreparedWound> wounds = prepare_wounds(assessment, findings);
  for (const PreparedWound& wound : wounds) {
    plan.wounds.push_back(
        measure_wound(wound, value.head_direction_deg, plan.tracing_error_cm, findings));
  }
  progress.at(0.2);
  plan.fill = fill_wounds(wounds, value, findings);
  progress.at(0.5);
  FilmShelf shelf(wound::stock_of(value));
  plan.drapes = drape_wounds(wounds, zones_of_kind(assessment, wound::ZoneKind::no_film), value,
                             shelf, findings);
  progress.at(0.85);
  const geometry::Region no_port = zones_of_kind(assessment, wound::ZoneKind::no_port);
  for (Drape& drape : plan.drapes) {
    place_port(drape, plan.fill, no_port, value.dressing, findings);
  }
  list_consumables(plan, value, findings);
  plan.findings = findings.take_sorted();
  progress.at(1);
  return plan;
}

}  // namespace drapewright::dressing
