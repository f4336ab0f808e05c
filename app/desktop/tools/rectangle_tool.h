#pragma once

#include "app/desktop/tools/axes_tool.h"
#include "app/wording/spoken.h"
#include "core/geometry/shapes.h"

namespace drapewright::desktop {

class RectangleTool : public AxesTool {
 public:
  explicit RectangleTool(TracingDesk& desk) : AxesTool(desk, Tool::rectangle) {}
  QString how_to() const override {
    return spoken("Drag from one end of the length to the other, then click at the width.");
  }

 protected:
  geometry::Ring shape(const Axes& axes) const override {
    return geometry::rectangle(axes.length_cm, axes.width_cm, axes.centre, axes.angle_deg);
  }
  QString what() const override { return spoken("rectangle"); }
};

}  // namespace drapewright::desktop
