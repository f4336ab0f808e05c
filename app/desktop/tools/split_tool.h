#pragma once

#include "app/desktop/tools/stroke_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Cuts the chosen outline in two along a line.
class SplitTool : public StrokeTool {
 public:
  explicit SplitTool(TracingDesk& desk) : StrokeTool(desk, Tool::split) {}
  QString how_to() const override { return spoken("Draw a line right across the chosen outline."); }

 protected:
  Meaning meaning() const override { return Meaning::line; }
  QString obstacle() const override;
  void done(const geometry::Ring& stroke) override;
};

}  // namespace drapewright::desktop
