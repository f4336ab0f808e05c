#pragma once

#include <QKeyEvent>
#include <QPainter>
#include <QPointF>
#include <QString>
#include <optional>

namespace drapewright::desktop {

/// Something that is done on the drawing by mouse and keys: panning it, laying a section through
/// it, moving the port. One class per tool; `PlanView::add_tool` registers it, and the tool added
/// last is asked first. A tool shows and tells; what it changes in a case goes through an undo
/// command of whoever listens to it.
///
/// Places are in the view's pixels; `PlanView::to_cm` and `to_pixels` convert. A tool that wants to
/// be painted anew calls the view's `update`.
class CanvasTool {
 public:
  CanvasTool() = default;
  CanvasTool(const CanvasTool&) = delete;
  CanvasTool& operator=(const CanvasTool&) = delete;
  virtual ~CanvasTool() = default;

  /// Draws on the bare ground, before grid and plan.
  virtual void paint_under(QPainter& /*painter*/) const {}
  /// Draws over the plan, clipped to the field inside the rulers.
  /// @param focused the stop that has the keyboard, if it is one of this tool's
  virtual void paint(QPainter& /*painter*/, std::optional<int> /*focused*/) const {}
  /// The view shows another case or plan (or none).
  virtual void plan_shown() {}

  // The mouse.
  /// The cursor's shape where this tool would take the mouse, or while it has it.
  virtual std::optional<Qt::CursorShape> cursor_at(QPointF /*pixel*/) const { return std::nullopt; }
  /// @return whether it takes the mouse: it then gets every `drag` until `release` or `cancel`
  virtual bool press(QPointF /*pixel*/, Qt::MouseButton /*button*/) { return false; }
  virtual void drag(QPointF /*pixel*/, Qt::KeyboardModifiers /*held*/) {}
  virtual void release() {}
  /// The mouse moves with no button down, and no tool has it.
  virtual void hover(QPointF /*pixel*/, Qt::KeyboardModifiers /*held*/) {}
  /// The second press of a double click. @return whether it was for it; else it counts as a press
  virtual bool double_click(QPointF /*pixel*/) { return false; }
  /// Escape, or the mouse was taken away: as before the press.
  virtual void cancel() { release(); }

  /// Whether it was taken up from among several that exclude each other.
  virtual bool is_in_hand() const { return false; }

  // The keyboard. Tab walks through the view's tools stop by stop, before it leaves the view.
  virtual int stops() const { return 0; }
  /// What a screen reader says of a stop: "Section, end A".
  virtual QString stop_name(int /*stop*/) const { return {}; }
  /// The stop that a press at `pixel` gives the keyboard to.
  virtual std::optional<int> stop_at(QPointF /*pixel*/) const { return std::nullopt; }
  /// @return whether the key was for it; else the view has it
  virtual bool key(int /*stop*/, const QKeyEvent& /*event*/) { return false; }
};

}  // namespace drapewright::desktop
