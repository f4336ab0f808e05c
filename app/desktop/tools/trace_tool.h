#pragma once

#include "app/desktop/tools/stroke_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Freehand: the outline is what a mouse, a finger or a pen goes round. What was drawn is kept
/// beside the smoothed outline.
class TraceTool : public StrokeTool {
 public:
  explicit TraceTool(TracingDesk& desk) : StrokeTool(desk, Tool::trace) {}
  QString how_to() const override { return spoken("Go round the wound's edge in one stroke."); }

 protected:
  Meaning meaning() const override { return Meaning::area; }
  void done(const geometry::Ring& stroke) override;
};

}  // namespace drapewright::desktop
