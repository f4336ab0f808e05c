#pragma once

#include "app/desktop/tools/outward_tool.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

/// A tunnel, by dragging from its mouth on the edge to where the probe ended.
class TunnelTool : public OutwardTool {
 public:
  explicit TunnelTool(TracingDesk& desk) : OutwardTool(desk, Tool::tunnel) {}
  QString how_to() const override {
    return spoken("Start on the edge at the tunnel, drag as far as the probe went.");
  }

 protected:
  QString mark(const Reach& reach) override;
  QString describe(const Reach& reach) const override;
};

}  // namespace drapewright::desktop
