#pragma once

#include "app/desktop/tools/stroke_tool.h"
#include "core/wound/wound.h"

namespace drapewright::desktop {

/// Marks what leads away from under the chosen wound's edge: start on the edge, drag outwards.
class OutwardTool : public StrokeTool {
 public:
  using StrokeTool::StrokeTool;

 protected:
  /// What a stroke says: the hours of its ends, seen from the wound's middle, and how far its end
  /// lies from the edge.
  struct Reach {
    double start_clock = 12;
    double from_clock = 12;  ///< of the range gone over, clockwise
    double to_clock = 12;
    double out_cm = 0;
  };
  Meaning meaning() const override { return Meaning::line; }
  QString obstacle() const override;
  void done(const geometry::Ring& stroke) override;
  QStringList words() const override;
  void paint_drawing(QPainter& painter) const override;

  virtual QString mark(const Reach& reach) = 0;  ///< @return what could not be, empty: done
  virtual QString describe(const Reach& reach) const = 0;
  wound::Wound& target_wound(wound::Case& value) const;

 private:
  Reach reach_of(const geometry::Ring& stroke) const;
};

}  // namespace drapewright::desktop
