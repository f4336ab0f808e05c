#include "app/desktop/jobs/plan_result.h"

#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

dressing::Finding stop(const std::string& code, const std::string& text) {
  return {.severity = dressing::Severity::stop, .code = code, .text = text};
}

}  // namespace

std::vector<dressing::Finding> findings_of(const PlanResult& result) {
  if (result.plan) return result.plan->findings;
  if (result.fault) {
    std::string text = say("No plan: {1}.", {result.fault->problem()});
    if (!result.fault->expected().empty()) {
      text += " " + say("Expected: {1}.", {result.fault->expected()});
    }
    dressing::Finding finding = stop("case-faulty", text);
    if (const auto& at = result.fault->place().drawing) finding.where_cm = {at->x_cm, at->y_cm};
    return {finding};
  }
  if (!result.breakdown.isEmpty()) {
    return {stop("program-failed",
                 say("No plan: the program failed on this case ({1}). Save the case and "
                     "report it.",
                     {result.breakdown.toStdString()}))};
  }
  return {};
}

}  // namespace drapewright::desktop
