#include "app/desktop/tools/chain_tool.h"

#include <algorithm>
#include <utility>

#include "app/desktop/canvas/plan_view.h"

namespace drapewright::desktop {
namespace {

constexpr double went_away_px = 30;    // from the start, before coming near it means to close
constexpr int drag_threshold_px = 12;  // a hand that shakes while it clicks puts one point

}  // namespace

geometry::Point ChainTool::place_at(QPointF pixel, Qt::KeyboardModifiers held) const {
  return snapped(pixel, snaps() ? held : held | Qt::AltModifier, snap_targets());
}

geometry::Ring ChainTool::snap_targets() const {
  const double away_cm = went_away_px / view().pixels_per_cm();
  const bool went_away = std::ranges::any_of(
      points_, [&](geometry::Point p) { return geometry::distance(p, points_.front()) > away_cm; });
  return points_.size() >= 3 && went_away ? geometry::Ring{points_.front()} : geometry::Ring{};
}

bool ChainTool::press(QPointF pixel, Qt::MouseButton button) {
  if (!in_hand() || button != Qt::LeftButton) return false;
  pressed_at_ = pixel;
  pressed_ = true;
  set_pen(place_at(pixel, {}));
  put();
  return true;
}

void ChainTool::drag(QPointF pixel, Qt::KeyboardModifiers held) {
  if ((pixel - pressed_at_).manhattanLength() < drag_threshold_px) return;
  set_pen(place_at(pixel, held));
}

void ChainTool::release() {
  if (!std::exchange(pressed_, false) || points_.empty()) return;
  const QPointF at = view().to_pixels(pen());
  if ((at - pressed_at_).manhattanLength() >= drag_threshold_px) put();
}

void ChainTool::cancel() {
  pressed_ = false;
  give_up();
}

void ChainTool::hover(QPointF pixel, Qt::KeyboardModifiers held) {
  if (in_hand()) set_pen(place_at(pixel, held));
}

bool ChainTool::double_click(QPointF) {
  if (!in_hand()) return false;
  finish();
  return true;
}

void ChainTool::put() {
  desk().abandon();
  if (!points_.empty() && points_.back() == pen()) return;
  points_.push_back(pen());
  mark_draft(true);
  point_put();
  view().update();
}

void ChainTool::act_at_pen() { put(); }

bool ChainTool::take_back() {
  if (points_.empty()) return false;
  points_.pop_back();
  mark_draft(!points_.empty());
  view().update();
  return true;
}

void ChainTool::give_up() {
  points_.clear();
  mark_draft(false);
  view().update();
}

geometry::Ring ChainTool::take_points() {
  mark_draft(false);
  view().update();
  return std::exchange(points_, {});
}

geometry::Ring ChainTool::points_and_pen() const {
  geometry::Ring all = points_;
  if (all.empty() || !(all.back() == pen())) all.push_back(pen());
  return all;
}

}  // namespace drapewright::desktop
