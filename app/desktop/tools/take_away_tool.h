#pragma once

#include "app/desktop/tools/stroke_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Takes the area gone round from the chosen outline.
class TakeAwayTool : public StrokeTool {
 public:
  explicit TakeAwayTool(TracingDesk& desk) : StrokeTool(desk, Tool::take_away) {}
  QString how_to() const override {
    return spoken("Go round what is to be taken from the chosen outline.");
  }

 protected:
  Meaning meaning() const override { return Meaning::area; }
  QString obstacle() const override;
  void done(const geometry::Ring& stroke) override;
};

}  // namespace drapewright::desktop
