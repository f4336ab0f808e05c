#pragma once

#include "app/desktop/tools/stroke_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Smooths a stretch of the chosen outline.
class SmoothTool : public StrokeTool {
 public:
  explicit SmoothTool(TracingDesk& desk) : StrokeTool(desk, Tool::smooth) {}
  QString how_to() const override {
    return spoken("Draw along the stretch of edge that is to be smoothed.");
  }

 protected:
  Meaning meaning() const override { return Meaning::line; }
  QString obstacle() const override;
  void done(const geometry::Ring& stroke) override;
};

}  // namespace drapewright::desktop
