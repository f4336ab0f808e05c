#include "app/desktop/tools/stroke_tool.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/outline_ink.h"
#include "app/wording/spoken.h"
#include "core/tracing/line.h"
#include "core/tracing/loops.h"
#include "core/tracing/trace.h"

namespace drapewright::desktop {
using geometry::Ring;

Ring area_in(const Ring& stroke) {
  return tracing::smoothed(tracing::without_overshoot(stroke), tracing::Ends::joined);
}

bool StrokeTool::press(QPointF pixel, Qt::MouseButton button) {
  if (!in_hand() || button != Qt::LeftButton) return false;
  set_pen(view().to_cm(pixel));
  begin();
  return true;
}

void StrokeTool::begin() {
  give_up();
  desk().abandon();
  const QString why_not = obstacle();
  if (!why_not.isEmpty()) return desk().say(why_not);
  begun_ = true;
  stroke_ = {pen()};
}

void StrokeTool::drag(QPointF pixel, Qt::KeyboardModifiers) {
  set_pen(view().to_cm(pixel));
  extend();
}

void StrokeTool::extend() {
  if (!begun_ || stroke_.back() == pen()) return;
  stroke_.push_back(pen());
  if (!crossing_) crossing_ = tracing::last_edge_crossing(stroke_);
}

void StrokeTool::release() {
  if (begun_) finish();
}

void StrokeTool::act_at_pen() { begun_ ? finish() : begin(); }

void StrokeTool::pen_moved() { extend(); }

void StrokeTool::finish() {
  if (!begun_) return;
  const Ring drawn = std::move(stroke_);
  give_up();
  if (drawn.size() >= 2) done(drawn);
}

void StrokeTool::give_up() {
  begun_ = false;
  stroke_.clear();
  crossing_.reset();
  view().update();
}

void StrokeTool::paint_drawing(QPainter& painter) const {
  paint_line(painter, stroke_, false, crossing_.has_value());
  if (meaning() == Meaning::area && stroke_.size() > 2) {
    painter.setPen(QPen(view().palette().color(QPalette::WindowText), 1, Qt::DotLine));
    painter.drawLine(view().to_pixels(stroke_.back()), view().to_pixels(stroke_.front()));
  }
  if (crossing_) paint_crossing(painter, view(), *crossing_);
}

QStringList StrokeTool::words() const {
  if (!begun_ || stroke_.size() < 2) return {};
  if (crossing_) return {spoken("The line crosses itself.")};
  QStringList lines{length_words(tracing::line_length(stroke_))};
  if (meaning() == Meaning::area) {
    lines << spoken("to the start {1}",
                    {length_words(geometry::distance(stroke_.back(), stroke_.front()))});
  }
  return lines;
}

}  // namespace drapewright::desktop
