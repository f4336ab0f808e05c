#pragma once

#include "app/desktop/tools/draw_tool.h"

namespace drapewright::desktop {

/// Draws one line from press to release (by keys: from Space to Space), then does something with
/// it.
class StrokeTool : public DrawTool {
 public:
  using DrawTool::DrawTool;

  bool press(QPointF pixel, Qt::MouseButton button) override;
  void drag(QPointF pixel, Qt::KeyboardModifiers held) override;
  void release() override;
  void cancel() override { give_up(); }

 protected:
  enum class Meaning { area, line };
  virtual Meaning meaning() const = 0;
  /// @param stroke  two points at least, as drawn
  virtual void done(const geometry::Ring& stroke) = 0;
  /// Why nothing can be drawn now, if so.
  virtual QString obstacle() const { return {}; }

  const geometry::Ring& stroke() const { return stroke_; }
  void act_at_pen() override;
  void finish() override;
  void pen_moved() override;
  bool is_begun() const override { return begun_; }
  void give_up() override;
  void paint_drawing(QPainter& painter) const override;
  QStringList words() const override;
  bool words_are_a_fault() const override { return crossing_.has_value(); }

 private:
  void begin();
  void extend();

  geometry::Ring stroke_;
  bool begun_ = false;
  std::optional<geometry::Point> crossing_;
};

/// The area that a hand went round: smoothed, and without the ends where it went on past its start.
geometry::Ring area_in(const geometry::Ring& stroke);

}  // namespace drapewright::desktop
