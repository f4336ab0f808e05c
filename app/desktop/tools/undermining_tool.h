#pragma once

#include "app/desktop/tools/outward_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// Undermining, by dragging a range of hours outwards.
class UnderminingTool : public OutwardTool {
 public:
  explicit UnderminingTool(TracingDesk& desk) : OutwardTool(desk, Tool::undermining) {}
  QString how_to() const override {
    return spoken(
        "Start on the edge where the undermining begins, drag outwards to its depth and round "
        "to where it ends.");
  }

 protected:
  QString mark(const Reach& reach) override;
  QString describe(const Reach& reach) const override;
};

}  // namespace drapewright::desktop
