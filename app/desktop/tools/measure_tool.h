#pragma once

#include "app/desktop/tools/chain_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Measures on the drawing and changes nothing: a distance between two points, the angle at the
/// second of three, the area that three or more enclose.
class MeasureTool : public ChainTool {
 public:
  explicit MeasureTool(TracingDesk& desk) : ChainTool(desk, Tool::measure) {}
  QString how_to() const override {
    return spoken(
        "Click two points for a distance, three for an angle and an area; Escape starts anew.");
  }

 protected:
  void point_put() override { finished_ = false; }
  void finish() override { finished_ = true; }
  void give_up() override;
  void paint_drawing(QPainter& painter) const override;
  QStringList words() const override;

 private:
  geometry::Ring measured() const { return finished_ ? points() : points_and_pen(); }
  bool finished_ = false;
};

}  // namespace drapewright::desktop
