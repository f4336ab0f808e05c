#pragma once

#include "app/desktop/canvas/canvas_tool.h"
#include "app/desktop/document/reshape_case.h"
#include "app/desktop/tools/tracing_desk.h"

namespace drapewright::desktop {

/// Moves, turns and scales the chosen outline as a whole, islands and all: drag inside it to move
/// it, the round handle above to turn it, a corner of the frame to scale it about its middle. By
/// keys: arrows move, comma and full stop turn by 1 degree, [ and ] scale by 1 %.
class WholeTool : public CanvasTool {
 public:
  explicit WholeTool(TracingDesk& desk) : desk_(desk) {}

  void paint(QPainter& painter, std::optional<int> focused) const override;
  void plan_shown() override;
  std::optional<Qt::CursorShape> cursor_at(QPointF pixel) const override;
  bool press(QPointF pixel, Qt::MouseButton button) override;
  void drag(QPointF pixel, Qt::KeyboardModifiers held) override;
  void release() override;
  void cancel() override;
  bool is_in_hand() const override { return in_hand(); }
  int stops() const override { return in_hand() ? 1 : 0; }
  QString stop_name(int stop) const override;
  std::optional<int> stop_at(QPointF pixel) const override;
  bool key(int stop, const QKeyEvent& event) override;

 private:
  enum class Grip { inside, turn, scale };
  struct Drag {
    Grip grip;
    geometry::Point from_cm;
    Displacement change;
  };
  bool in_hand() const { return desk_.tool() == Tool::whole && desk_.has_outline(); }
  std::optional<Grip> grip_at(QPointF pixel) const;
  QRectF frame() const;
  QPointF turn_handle() const;
  geometry::Point middle() const;
  void make(const Displacement& change, bool by_key);

  TracingDesk& desk_;
  std::optional<Drag> drag_;
};

}  // namespace drapewright::desktop
