#include "app/desktop/tools/section_tool.h"

#include <QPainter>
#include <cmath>
#include <utility>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/tools/arrow_keys.h"
#include "app/printing/pens.h"
#include "app/wording/spoken.h"
#include "core/geometry/distance.h"

namespace drapewright::desktop {

using geometry::Point;
using geometry::Segment;

namespace {

constexpr double handle_px = 12;  ///< radius: a target of 24 pixels
constexpr double line_reach_px = 5;
constexpr double shortest_cm = 0.5;  ///< a shorter line cuts nothing worth seeing

}  // namespace

SectionTool::SectionTool(PlanView& view, std::function<void(const Segment&)> moved,
                         std::function<void()> reset)
    : view_(view), moved_(std::move(moved)), reset_(std::move(reset)) {}

void SectionTool::set_line(const std::optional<Segment>& line) {
  line_ = line;
  if (!line_) drag_.reset();
  view_.update();
}

QPointF SectionTool::end_pixel(int stop) const {
  return view_.to_pixels(stop == 0 ? line_->from : line_->to);
}

std::optional<int> SectionTool::stop_at(QPointF pixel) const {
  for (int stop = 0; stop < stops(); ++stop) {
    const QPointF off = pixel - end_pixel(stop);
    if (std::hypot(off.x(), off.y()) <= handle_px) return stop;
  }
  return std::nullopt;
}

std::optional<SectionTool::Part> SectionTool::part_at(QPointF pixel) const {
  if (!line_) return std::nullopt;
  if (const auto stop = stop_at(pixel)) return *stop == 0 ? Part::a : Part::b;
  const Point place = view_.to_cm(pixel);
  const double off_cm = distance(geometry::nearest_on(*line_, place), place);
  return off_cm * view_.pixels_per_cm() <= line_reach_px ? std::optional(Part::whole)
                                                         : std::nullopt;
}

std::optional<Qt::CursorShape> SectionTool::cursor_at(QPointF pixel) const {
  if (drag_) return Qt::ClosedHandCursor;
  const auto part = part_at(pixel);
  if (!part) return std::nullopt;
  return *part == Part::whole ? Qt::SizeAllCursor : Qt::OpenHandCursor;
}

bool SectionTool::press(QPointF pixel, Qt::MouseButton button) {
  const auto part = part_at(pixel);
  if (button != Qt::LeftButton || !part) return false;
  drag_ = {*part, view_.to_cm(pixel), *line_};
  return true;
}

void SectionTool::drag(QPointF pixel, Qt::KeyboardModifiers) {
  if (!drag_) return;
  const Point by = view_.to_cm(pixel) - drag_->grasped_cm;
  Segment line = drag_->before;
  if (drag_->part != Part::b) line.from = line.from + by;
  if (drag_->part != Part::a) line.to = line.to + by;
  move_to(line);
}

void SectionTool::release() { drag_.reset(); }

void SectionTool::cancel() {
  if (const auto dropped = std::exchange(drag_, std::nullopt)) move_to(dropped->before);
}

void SectionTool::move_to(const Segment& line) {
  if (distance(line.from, line.to) < shortest_cm) return;
  line_ = line;
  view_.update();
  moved_(line);
}

QString SectionTool::stop_name(int stop) const {
  return spoken(
      "Section, end {1}. Arrow keys move it 1 mm, with Shift 1 cm; Delete lays the usual "
      "line again.",
      {stop == 0 ? "A" : "B"});
}

bool SectionTool::key(int stop, const QKeyEvent& event) {
  if (!line_) return false;
  if (event.key() == Qt::Key_Delete || event.key() == Qt::Key_Backspace) {
    reset_();
    return true;
  }
  const auto step = arrow_step_cm(event);
  if (!step) return false;
  Segment line = *line_;
  (stop == 0 ? line.from : line.to) = (stop == 0 ? line.from : line.to) + *step;
  move_to(line);
  return true;
}

void SectionTool::paint(QPainter& painter, std::optional<int> focused) const {
  if (!line_) return;
  const QColor halo = printing::to_qcolor(report::ground_colour(view_.ground()));
  const QColor ink = printing::to_qcolor(report::ink_colour(view_.ground()));
  const QPointF a = end_pixel(0), b = end_pixel(1);
  for (const auto& [colour, width] : {std::pair(halo, 5.0), std::pair(ink, 1.6)}) {
    painter.setPen(QPen(colour, width, colour == ink ? Qt::DashDotLine : Qt::SolidLine));
    painter.drawLine(a, b);
  }
  QFont bold = view_.font();
  bold.setBold(true);
  painter.setFont(bold);
  for (int stop = 0; stop < 2; ++stop) {
    const QPointF at = stop == 0 ? a : b;
    const bool has_keys = focused == stop;
    painter.setBrush(halo);
    painter.setPen(
        QPen(has_keys ? view_.palette().color(QPalette::Highlight) : ink, has_keys ? 3.5 : 1.6));
    painter.drawEllipse(at, handle_px - 1, handle_px - 1);
    painter.setPen(ink);
    const QRectF box(at - QPointF(handle_px, handle_px), QSizeF(2 * handle_px, 2 * handle_px));
    painter.drawText(box, Qt::AlignCenter, stop == 0 ? "A" : "B");
  }
}

}  // namespace drapewright::desktop
