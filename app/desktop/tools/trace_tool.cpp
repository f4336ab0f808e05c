#include "app/desktop/tools/trace_tool.h"

#include "app/wording/spoken.h"

namespace drapewright::desktop {

void TraceTool::done(const geometry::Ring& stroke) {
  desk().offer(area_in(stroke), spoken("trace"), stroke);
}

}  // namespace drapewright::desktop
