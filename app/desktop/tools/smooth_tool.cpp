#include "app/desktop/tools/smooth_tool.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/tool_words.h"
#include "app/wording/spoken.h"
#include "core/tracing/reshape.h"
#include "core/tracing/trace.h"

namespace drapewright::desktop {
namespace {

constexpr double window_cm = 1;

}  // namespace

QString SmoothTool::obstacle() const {
  return desk().has_outline() ? QString() : no_outline_words();
}

void SmoothTool::done(const geometry::Ring& stroke) {
  const auto ring =
      tracing::smoothed_stretch(desk().outline(), stroke, reach_cm(view()), window_cm);
  if (!ring)
    return desk().say(spoken("Start and end on the edge of the chosen outline, in two places."));
  desk().offer(*ring, spoken("smooth"));
}

}  // namespace drapewright::desktop
