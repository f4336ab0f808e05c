#include "app/desktop/tools/tool_words.h"

#include <cmath>

#include "app/desktop/canvas/plan_view.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

constexpr double reach_px = 24;

}  // namespace

QString hour_words(double hour) {
  return QString::fromStdString(format_number(hour, hour == std::floor(hour) ? 0 : 2));
}

double reach_cm(const PlanView& view) { return reach_px / view.pixels_per_cm(); }

}  // namespace drapewright::desktop
