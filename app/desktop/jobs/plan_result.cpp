#include "app/desktop/jobs/plan_result.h"

namespace drapewright::desktop {
namespace {

dressing::Finding stop(const std::string& code, const std::string& text) {
  return {.severity = dressing::Severity::stop, .code = code, .text = text};
}

}  // namespace

std::vector<dressing::Finding> findings_of(const PlanResult& result) {
  if (result.plan) return result.plan->findings;
  if (result.fault) {
    std::string text = "No plan: " + result.fault->problem() + ".";
    if (!result.fault->expected().empty()) text += " Expected: " + result.fault->expected() + ".";
    dressing::Finding finding = stop("case-faulty", text);
    if (const auto& at = result.fault->place().drawing) finding.where_cm = {at->x_cm, at->y_cm};
    return {finding};
  }
  if (!result.breakdown.isEmpty()) {
    return {stop("program-failed", "No plan: the program failed on this case (" +
                                       result.breakdown.toStdString() +
                                       "). Save the case and report it.")};
  }
  return {};
}

}  // namespace drapewright::desktop
