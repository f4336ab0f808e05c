#pragma once

#include "app/desktop/tools/stroke_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Draws a stretch of the chosen outline anew.
class RetraceTool : public StrokeTool {
 public:
  explicit RetraceTool(TracingDesk& desk) : StrokeTool(desk, Tool::retrace) {}
  QString how_to() const override {
    return spoken("Start on the edge, draw it as it should run, end on the edge.");
  }

 protected:
  Meaning meaning() const override { return Meaning::line; }
  QString obstacle() const override;
  void done(const geometry::Ring& stroke) override;
};

}  // namespace drapewright::desktop
