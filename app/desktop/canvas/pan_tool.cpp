#include "app/desktop/canvas/pan_tool.h"

#include "app/desktop/canvas/plan_view.h"

namespace drapewright::desktop {
namespace {

constexpr int drag_threshold_px = 3;

}  // namespace

std::optional<Qt::CursorShape> PanTool::cursor_at(QPointF) const {
  return dragging_ ? std::optional(Qt::ClosedHandCursor) : std::nullopt;
}

bool PanTool::press(QPointF pixel, Qt::MouseButton button) {
  if (button != Qt::LeftButton && button != Qt::MiddleButton) return false;
  pressed_at_ = last_ = pixel;
  return true;
}

void PanTool::drag(QPointF pixel, Qt::KeyboardModifiers) {
  if ((pixel - pressed_at_).manhattanLength() >= drag_threshold_px) dragging_ = true;
  if (!dragging_) return;
  view_.pan(pixel - last_);
  last_ = pixel;
}

}  // namespace drapewright::desktop
