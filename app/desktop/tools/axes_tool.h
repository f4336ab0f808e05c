#pragma once

#include "app/desktop/tools/chain_tool.h"

namespace drapewright::desktop {

/// A shape by two axes: from one end of the length to the other, then out to the width.
class AxesTool : public ChainTool {
 public:
  using ChainTool::ChainTool;

 protected:
  struct Axes {
    geometry::Point centre;
    double length_cm = 0, width_cm = 0, angle_deg = 0;
  };
  virtual geometry::Ring shape(const Axes& axes) const = 0;
  virtual QString what() const = 0;

  void point_put() override;
  void paint_drawing(QPainter& painter) const override;
  QStringList words() const override;

 private:
  std::optional<Axes> axes(const geometry::Ring& three) const;
};

}  // namespace drapewright::desktop
