#pragma once

#include <QStringList>

#include "app/desktop/canvas/canvas_tool.h"
#include "app/desktop/tools/tracing_desk.h"
#include "core/geometry/shape.h"

namespace drapewright::desktop {

/// What all tools of the tracing desk share: they act only while they are in hand, and have a pen
/// point that the arrow keys move, so that everything that is drawn by mouse can be drawn by keys.
class DrawTool : public CanvasTool {
 public:
  DrawTool(TracingDesk& desk, Tool tool) : desk_(desk), tool_(tool) {}

  void paint(QPainter& painter, std::optional<int> focused) const override;
  std::optional<Qt::CursorShape> cursor_at(QPointF pixel) const override;
  void hover(QPointF pixel, Qt::KeyboardModifiers held) override;
  bool is_in_hand() const override { return in_hand(); }
  int stops() const override { return in_hand() ? 1 : 0; }
  QString stop_name(int stop) const override;
  std::optional<int> stop_at(QPointF pixel) const override;
  bool key(int stop, const QKeyEvent& event) override;

  /// How it is used, in a line.
  virtual QString how_to() const = 0;

 protected:
  TracingDesk& desk() const { return desk_; }
  PlanView& view() const { return desk_.view(); }
  bool in_hand() const { return desk_.tool() == tool_; }
  void mark_draft(bool begun) const { desk_.set_draft(tool_, begun); }
  geometry::Point pen() const { return pen_; }
  void set_pen(geometry::Point at);
  /// The place under a pixel, drawn to what is near: `targets`, the corners of all shapes, the grid
  /// where that is switched on. With Alt held nothing draws it.
  geometry::Point snapped(QPointF pixel, Qt::KeyboardModifiers held,
                          const geometry::Ring& targets = {}) const;

  /// Space: as a press at the pen. Enter: finish. Backspace: take the last point back.
  virtual void act_at_pen() = 0;
  virtual void finish() {}
  virtual bool take_back() { return false; }
  virtual void pen_moved() {}
  /// Whether something is begun that Escape abandons.
  virtual bool is_begun() const = 0;
  virtual void give_up() = 0;
  virtual void paint_drawing(QPainter& /*painter*/) const {}
  /// What is told beside the pen.
  virtual QStringList words() const { return {}; }
  virtual bool words_are_a_fault() const { return false; }

  /// Paints a line as everything that is being drawn is painted.
  void paint_line(QPainter& painter, const geometry::Ring& line, bool closed,
                  bool faulty = false) const;

 private:
  void paint_pen(QPainter& painter) const;

  TracingDesk& desk_;
  Tool tool_;
  geometry::Point pen_;
};

/// "4.2 cm", as the tools write lengths.
QString length_words(double cm);
/// "87°", the angle at the last corner but one of a line. @pre three points or more
QString angle_words(const geometry::Ring& line);

}  // namespace drapewright::desktop
