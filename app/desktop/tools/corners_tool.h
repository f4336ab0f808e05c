#pragma once

#include "app/desktop/tools/chain_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// An outline corner by corner, closed by a click on its first corner, a double click or Enter.
class CornersTool : public ChainTool {
 public:
  explicit CornersTool(TracingDesk& desk) : ChainTool(desk, Tool::corners) {}
  QString how_to() const override {
    return spoken("Click corner after corner; click the first one, or press Enter, to close.");
  }

 protected:
  void point_put() override;
  void finish() override;
  void paint_drawing(QPainter& painter) const override;
  QStringList words() const override;
  bool words_are_a_fault() const override { return crossing().has_value(); }

 private:
  /// Where the corners and the rubber band cross.
  std::optional<geometry::Point> crossing() const;
};

}  // namespace drapewright::desktop
