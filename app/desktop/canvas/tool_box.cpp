#include "app/desktop/canvas/tool_box.h"

#include <algorithm>
#include <ranges>

namespace drapewright::desktop {

void ToolBox::add(std::unique_ptr<CanvasTool> tool) { tools_.push_back(std::move(tool)); }

void ToolBox::paint(QPainter& painter, bool with_focus) const {
  const auto stop = with_focus ? live_stop() : std::nullopt;
  for (const auto& tool : tools_) {
    const bool focused = stop && stop->tool == tool.get();
    painter.save();
    tool->paint(painter, focused ? std::optional(stop->index) : std::nullopt);
    painter.restore();
  }
}

void ToolBox::paint_under(QPainter& painter) const {
  for (const auto& tool : tools_) {
    painter.save();
    tool->paint_under(painter);
    painter.restore();
  }
}

void ToolBox::plan_shown() {
  for (const auto& tool : tools_) tool->plan_shown();
  if (stop_ && stop_->index >= stop_->tool->stops()) stop_.reset();
}

Qt::CursorShape ToolBox::cursor_at(QPointF pixel) const {
  if (working_ != nullptr) return working_->cursor_at(pixel).value_or(Qt::CrossCursor);
  for (const auto& tool : tools_ | std::views::reverse) {
    if (const auto shape = tool->cursor_at(pixel)) return *shape;
  }
  return Qt::CrossCursor;
}

void ToolBox::press(QPointF pixel, Qt::MouseButton button) {
  if (working_ != nullptr) return;  // a second button during a drag
  for (const auto& tool : tools_ | std::views::reverse) {
    if (!tool->press(pixel, button)) continue;
    working_ = tool.get();
    const auto index = tool->stop_at(pixel);
    stop_ = index ? std::optional(Stop{tool.get(), *index}) : std::nullopt;
    return;
  }
}

void ToolBox::drag(QPointF pixel, Qt::KeyboardModifiers held) {
  if (working_ != nullptr) working_->drag(pixel, held);
}

void ToolBox::release() {
  if (working_ != nullptr) std::exchange(working_, nullptr)->release();
}

void ToolBox::hover(QPointF pixel, Qt::KeyboardModifiers held) {
  if (working_ != nullptr) return;
  for (const auto& tool : tools_) tool->hover(pixel, held);
}

void ToolBox::double_click(QPointF pixel, Qt::MouseButton button) {
  if (working_ != nullptr) return;
  for (const auto& tool : tools_ | std::views::reverse) {
    if (button == Qt::LeftButton && tool->double_click(pixel)) return;
  }
  press(pixel, button);
}

bool ToolBox::cancel() {
  if (working_ != nullptr) {
    std::exchange(working_, nullptr)->cancel();
    return true;
  }
  return std::exchange(stop_, std::nullopt).has_value();
}

std::vector<ToolBox::Stop> ToolBox::all_stops() const {
  std::vector<Stop> all;
  for (const auto& tool : tools_) {
    for (int i = 0; i < tool->stops(); ++i) all.push_back({tool.get(), i});
  }
  return all;
}

std::optional<ToolBox::Stop> ToolBox::live_stop() const {
  return stop_ && stop_->index < stop_->tool->stops() ? stop_ : std::nullopt;
}

bool ToolBox::step(bool forward) {
  std::vector<Stop> all = all_stops();
  if (!forward) std::ranges::reverse(all);
  const auto here = stop_ ? std::ranges::find(all, *stop_) : all.end();
  const auto next = here == all.end() ? all.begin() : std::next(here);
  const bool back_to_view = !forward && !stop_;
  stop_ = next == all.end() || back_to_view ? std::nullopt : std::optional(*next);
  return stop_.has_value();
}

void ToolBox::give_stop_to_hand() {
  stop_.reset();
  for (const auto& tool : tools_) {
    if (tool->is_in_hand() && tool->stops() > 0) stop_ = Stop{tool.get(), 0};
  }
}

QString ToolBox::stop_name() const {
  const auto stop = live_stop();
  return stop ? stop->tool->stop_name(stop->index) : QString();
}

bool ToolBox::key(const QKeyEvent& event) {
  const auto stop = live_stop();
  return stop && stop->tool->key(stop->index, event);
}

}  // namespace drapewright::desktop
