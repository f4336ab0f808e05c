#include "core/dressing/plan.h"

#include <utility>

#include "core/dressing/course.h"
#include "core/dressing/cut_plan.h"
#include "core/dressing/cut_remarks.h"
#include "core/dressing/drape.h"
#include "core/dressing/fill.h"
#include "core/dressing/fill_remarks.h"
#include "core/dressing/film_sharing.h"
#include "core/dressing/measures.h"
#include "core/dressing/prepare.h"
#include "core/dressing/remarks.h"

namespace drapewright::dressing {

namespace {

/// A plan whose filler and film are shaped, but not yet cut from sheets, and what was found so far.
struct Draft {
  Plan plan;
  FindingList findings;
  std::vector<PreparedWound> wounds;
};

Draft draft_plan(const wound::Case& value, const std::string& today, const Progress& progress) {
  const wound::Assessment& assessment = value.current();
  Draft draft;
  auto& [plan, findings, wounds] = draft;
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
  wounds = prepare_wounds(assessment, findings, progress);
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
  progress.at(0.4);
  plan.drapes = drape_wounds(wounds,
                             {zones_of_kind(assessment, wound::ZoneKind::no_film),
                              zones_of_kind(assessment, wound::ZoneKind::no_port)},
                             value, plan.fill, findings, progress);
  share_film_sheets(plan, value, findings, progress);
  remark_on_girth(value, plan.drapes, findings);
  progress.at(0.6);
  return draft;
}

/// The draft with its filler cut in one way.
Plan finished(Draft draft, const CutPlan& cut, const wound::Case& value) {
  auto& [plan, findings, wounds] = draft;
  enter(cut, plan);
  for (const PreparedWound& wound : wounds) {
    remark_on_pieces(wound, plan.fill.layers, findings);
  }
  remark_on_piece_counts(plan, findings);
  remark_on_cut(cut, value, findings);
  list_consumables(plan, value, findings);
  plan.findings = findings.take_sorted();
  return std::move(plan);
}

}  // namespace

Plan plan_dressing(const wound::Case& value, const Progress& progress, const PlanOptions& options) {
  wound::check(value);
  const Draft draft = draft_plan(value, options.today, progress);
  std::function<void(const CutPlan&)> told;
  if (options.on_better) {
    told = [&](const CutPlan& cut) { options.on_better(finished(draft, cut, value)); };
  }
  const CutPlan cut = cut_filler(draft.plan, value, options, told, progress);
  progress.at(1);
  return finished(draft, cut, value);
}

}  // namespace drapewright::dressing
