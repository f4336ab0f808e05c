#pragma once

#include <memory>
#include <vector>

#include "app/desktop/canvas/canvas_tool.h"

namespace drapewright::desktop {

/// The tools of a view: which of them has the mouse, and which stop has the keyboard.
class ToolBox {
 public:
  void add(std::unique_ptr<CanvasTool> tool);

  void paint(QPainter& painter, bool with_focus) const;
  void paint_under(QPainter& painter) const;
  void plan_shown();

  Qt::CursorShape cursor_at(QPointF pixel) const;
  void press(QPointF pixel, Qt::MouseButton button);
  void drag(QPointF pixel, Qt::KeyboardModifiers held);
  void release();
  void hover(QPointF pixel, Qt::KeyboardModifiers held);
  void double_click(QPointF pixel, Qt::MouseButton button);
  bool is_working() const { return working_ != nullptr; }
  /// @return whether there was something to cancel: a drag, or a stop that had the keyboard
  bool cancel();

  /// On to the next stop, or back. @return false past the last or before the first: none has it
  /// then
  bool step(bool forward);
  void leave_stop() { stop_.reset(); }
  /// Gives the keyboard to the tool that is in hand; to none where none is.
  void give_stop_to_hand();
  /// Of the stop that has the keyboard; empty without one.
  QString stop_name() const;
  bool key(const QKeyEvent& event);

 private:
  struct Stop {
    CanvasTool* tool;
    int index;
    bool operator==(const Stop&) const = default;
  };
  std::vector<Stop> all_stops() const;
  /// The stop that has the keyboard, unless its tool has fewer by now.
  std::optional<Stop> live_stop() const;

  std::vector<std::unique_ptr<CanvasTool>> tools_;  ///< asked from the last to the first
  CanvasTool* working_ = nullptr;
  std::optional<Stop> stop_;
};

}  // namespace drapewright::desktop
