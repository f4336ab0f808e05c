#pragma once

#include <functional>
#include <optional>

#include "app/desktop/canvas/canvas_tool.h"
#include "core/geometry/shape.h"

namespace drapewright::desktop {

class PlanView;

/// The line that the section is cut along, laid over the drawing: its ends A and B are moved by
/// mouse or keys, the whole line by the mouse between them. It belongs to the view, not to the
/// case. Arrow keys move an end 1 mm, with Shift 1 cm; Delete lays the usual line again.
class SectionTool : public CanvasTool {
 public:
  /// @param moved told of every new place while it is moved
  /// @param reset asked for the usual line
  SectionTool(PlanView& view, std::function<void(const geometry::Segment&)> moved,
              std::function<void()> reset);

  /// Nothing hides it.
  void set_line(const std::optional<geometry::Segment>& line);
  const std::optional<geometry::Segment>& line() const { return line_; }

  void paint(QPainter& painter, std::optional<int> focused) const override;
  std::optional<Qt::CursorShape> cursor_at(QPointF pixel) const override;
  bool press(QPointF pixel, Qt::MouseButton button) override;
  void drag(QPointF pixel, Qt::KeyboardModifiers held) override;
  void release() override;
  void cancel() override;
  int stops() const override { return line_ ? 2 : 0; }
  QString stop_name(int stop) const override;
  std::optional<int> stop_at(QPointF pixel) const override;
  bool key(int stop, const QKeyEvent& event) override;

 private:
  enum class Part { a, b, whole };
  struct Drag {
    Part part;
    geometry::Point grasped_cm;
    geometry::Segment before;
  };

  std::optional<Part> part_at(QPointF pixel) const;
  QPointF end_pixel(int stop) const;
  void move_to(const geometry::Segment& line);

  PlanView& view_;
  std::function<void(const geometry::Segment&)> moved_;
  std::function<void()> reset_;
  std::optional<geometry::Segment> line_;
  std::optional<Drag> drag_;
};

}  // namespace drapewright::desktop
