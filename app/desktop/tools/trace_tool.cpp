#include "app/desktop/tools/trace_tool.h"

namespace drapewright::desktop {

void TraceTool::done(const geometry::Ring& stroke) {
  desk().offer(area_in(stroke), "trace", stroke);
}

}  // namespace drapewright::desktop
