#pragma once

#include "app/desktop/tools/draw_tool.h"

namespace drapewright::desktop {

/// Puts points one after another: by clicks, by a press and a release apart from it, or by Space at
/// the pen. A rubber band leads from the last one to the pen.
class ChainTool : public DrawTool {
 public:
  using DrawTool::DrawTool;

  bool press(QPointF pixel, Qt::MouseButton button) override;
  void drag(QPointF pixel, Qt::KeyboardModifiers held) override;
  void release() override;
  void cancel() override;
  void hover(QPointF pixel, Qt::KeyboardModifiers held) override;
  bool double_click(QPointF pixel) override;

 protected:
  /// A point was put last; the tool may go on, or take the chain and begin anew.
  virtual void point_put() = 0;
  /// What points are drawn to besides the corners of shapes: the first, to close,
  /// once the chain went away from it.
  /// Never those just put, or a fine outline could not be clicked.
  virtual geometry::Ring snap_targets() const;
  /// Whether points are drawn to what is near.
  virtual bool snaps() const { return true; }

  const geometry::Ring& points() const { return points_; }
  geometry::Ring take_points();
  /// The points so far and the pen.
  geometry::Ring points_and_pen() const;
  void act_at_pen() override;
  bool take_back() override;
  bool is_begun() const override { return !points_.empty(); }
  void give_up() override;

 private:
  void put();
  geometry::Point place_at(QPointF pixel, Qt::KeyboardModifiers held) const;

  geometry::Ring points_;
  QPointF pressed_at_;
  bool pressed_ = false;
};

}  // namespace drapewright::desktop
