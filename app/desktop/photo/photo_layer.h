#pragma once

#include "app/desktop/canvas/canvas_tool.h"

namespace drapewright::desktop {

class PhotoDesk;
class PlanView;

/// The photograph under the drawing, and the places on it that a length is asked for. It answers
/// nothing, so that no slip of the hand moves it.
class PhotoLayer : public CanvasTool {
 public:
  PhotoLayer(const PlanView& view, const PhotoDesk& photo) : view_(view), photo_(photo) {}
  void paint_under(QPainter& painter) const override;
  void paint(QPainter& painter, std::optional<int> focused) const override;

 private:
  const PlanView& view_;
  const PhotoDesk& photo_;
};

}  // namespace drapewright::desktop
