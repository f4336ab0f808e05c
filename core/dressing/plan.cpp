#include "core/dressing/plan.h"

#include "core/dressing/course.h"
#include "core/dressing/drape.h"
#include "core/dressing/fill.h"
#include "core/dressing/measures.h"
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
  if (const practice::BodySite* site = wound::site_of(value)) {
    plan.body_site = site->id;
    plan.twelve = site->twelve;
  }
  plan.tracing_error_cm = value.dressing.tracing_error_mm / 10;
  plan.border_cm = value.dressing.border_cm;
  remark_on_case(value, today, findings);

  progress.at(0);
  const std::vector<PreparedWound> wounds = prepare_wounds(assessment, findings, progress);
  for (const PreparedWound& wound : wounds) {
    progress.at(0.15);
    plan.wounds.push_back(
        measure_wound(wound, value.head_direction_deg, plan.tracing_error_cm, findings));
  }
  progress.at(0.2);
  plan.fill = fill_wounds(wounds, value, findings, progress);
  for (std::size_t i = 0; i < wounds.size(); ++i) {
    plan.wounds[i].pocket_volume_cm3 =
        pocket_volume(wounds[i], plan.fill.layers, value.head_direction_deg);
  }
  progress.at(0.5);
  plan.drapes = drape_wounds(wounds,
                             {zones_of_kind(assessment, wound::ZoneKind::no_film),
                              zones_of_kind(assessment, wound::ZoneKind::no_port)},
                             value, plan.fill, findings, progress);
  remark_on_girth(value, plan.drapes, findings);
  list_consumables(plan, value, findings);
  plan.findings = findings.take_sorted();
  progress.at(1);
  return plan;
}

}  // namespace drapewright::dressing
