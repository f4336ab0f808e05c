#pragma once

#include "app/desktop/canvas/canvas_tool.h"

namespace drapewright::desktop {

class PlanView;

/// Dragging the drawing about with the left or middle button.
class PanTool : public CanvasTool {
 public:
  explicit PanTool(PlanView& view) : view_(view) {}

  std::optional<Qt::CursorShape> cursor_at(QPointF pixel) const override;
  bool press(QPointF pixel, Qt::MouseButton button) override;
  void drag(QPointF pixel, Qt::KeyboardModifiers held) override;
  void release() override { dragging_ = false; }

 private:
  PlanView& view_;
  QPointF pressed_at_, last_;
  bool dragging_ = false;
};

}  // namespace drapewright::desktop
