#pragma once

#include "app/desktop/tools/stroke_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Adds the area gone round to the chosen outline; drawn over two wounds it joins them.
class AddTool : public StrokeTool {
 public:
  explicit AddTool(TracingDesk& desk) : StrokeTool(desk, Tool::add) {}
  QString how_to() const override {
    return spoken("Go round what is to be added to the chosen outline.");
  }

 protected:
  Meaning meaning() const override { return Meaning::area; }
  QString obstacle() const override;
  void done(const geometry::Ring& stroke) override;
};

}  // namespace drapewright::desktop
