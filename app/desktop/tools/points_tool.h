#pragma once

#include "app/desktop/canvas/canvas_tool.h"
#include "app/desktop/tools/tracing_desk.h"

namespace drapewright::desktop {

/// Moves the corners of the chosen outline: drag a corner, or press between two to put a new one
/// in; Delete or a right click takes one out. By keys: Tab from corner to corner, arrows move it,
/// Insert puts one after it.
class PointsTool : public CanvasTool {
 public:
  explicit PointsTool(TracingDesk& desk) : desk_(desk) {}

  void paint(QPainter& painter, std::optional<int> focused) const override;
  void plan_shown() override;
  std::optional<Qt::CursorShape> cursor_at(QPointF pixel) const override;
  bool press(QPointF pixel, Qt::MouseButton button) override;
  void drag(QPointF pixel, Qt::KeyboardModifiers held) override;
  void release() override;
  void cancel() override;
  bool is_in_hand() const override { return in_hand(); }
  int stops() const override;
  QString stop_name(int stop) const override;
  std::optional<int> stop_at(QPointF pixel) const override;
  bool key(int stop, const QKeyEvent& event) override;

 private:
  struct Drag {
    std::size_t corner = 0;
    bool inserted = false;
    bool moved = false;
    QPointF pressed_at;
    geometry::Ring ring;  ///< with the corner where it is dragged to
    std::optional<geometry::Point> crossing;
  };
  bool in_hand() const { return desk_.tool() == Tool::points && desk_.has_outline(); }
  std::optional<std::size_t> corner_at(QPointF pixel) const;
  void move_corner(std::size_t corner, geometry::Point by);
  void insert_after(std::size_t corner);
  void remove_corner(std::size_t corner);
  void paint_corners(QPainter& painter, const geometry::Ring& ring,
                     std::optional<int> focused) const;

  TracingDesk& desk_;
  std::optional<Drag> drag_;
};

}  // namespace drapewright::desktop
