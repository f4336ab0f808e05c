#include "app/desktop/tools/retrace_tool.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/tool_words.h"
#include "app/wording/spoken.h"
#include "core/tracing/reshape.h"
#include "core/tracing/trace.h"

namespace drapewright::desktop {

QString RetraceTool::obstacle() const {
  return desk().has_outline() ? QString() : no_outline_words();
}

void RetraceTool::done(const geometry::Ring& stroke) {
  const geometry::Ring line = tracing::smoothed(stroke, tracing::Ends::open);
  const auto ring = tracing::retraced(desk().outline(), line, reach_cm(view()));
  if (!ring)
    return desk().say(spoken("Start and end on the edge of the chosen outline, in two places."));
  desk().offer(*ring, spoken("retrace"));
}

}  // namespace drapewright::desktop
