#pragma once

#include "app/desktop/canvas/canvas_tool.h"
#include "app/desktop/tools/tracing_desk.h"

namespace drapewright::desktop {

/// Shows the outline that the desk holds back, with its crossing; it answers nothing.
class HeldMark : public CanvasTool {
 public:
  explicit HeldMark(TracingDesk& desk) : desk_(desk) {}
  void paint(QPainter& painter, std::optional<int> focused) const override;

 private:
  TracingDesk& desk_;
};

}  // namespace drapewright::desktop
