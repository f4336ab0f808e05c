#include "app/desktop/tools/draw_tool.h"

#include <QPainterPath>
#include <cmath>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/theme/marks.h"
#include "app/desktop/tools/arrow_keys.h"
#include "app/desktop/tools/outline_ink.h"
#include "app/desktop/tools/word_plate.h"
#include "app/printing/pens.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/tracing/line.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr double snap_px = 9;
constexpr double grid_cm = 0.5;
constexpr double pen_px = 11;

}  // namespace

QString length_words(double cm) { return QString::fromStdString(format_number(cm, 1)) + " cm"; }

QString angle_words(const Ring& line) {
  const std::size_t last = line.size() - 1;
  const double angle = tracing::corner_angle_deg(line[last - 2], line[last - 1], line[last]);
  return QString::fromStdString(format_number(angle, 0)) + "\u00b0";
}

void DrawTool::set_pen(Point at) {
  pen_ = at;
  view().update();
}

Point DrawTool::snapped(QPointF pixel, Qt::KeyboardModifiers held, const Ring& targets) const {
  const Point at = view().to_cm(pixel);
  if (held & Qt::AltModifier) return at;
  const double reach_cm = snap_px / view().pixels_per_cm();
  Point best = at;
  double nearest = reach_cm;
  const auto try_point = [&](Point p) {
    const double far = geometry::distance(p, at);
    if (far >= nearest) return;
    nearest = far;
    best = p;
  };
  for (const Point& p : targets) try_point(p);
  const auto& value = desk().document().value();
  for (const ShapeRef& ref : shapes_of(value)) {
    for (const Point& p : outline_of(value, ref)) try_point(p);
  }
  if (nearest == reach_cm && desk().snaps_to_grid()) {
    try_point({std::round(at.x / grid_cm) * grid_cm, std::round(at.y / grid_cm) * grid_cm});
  }
  return best;
}

std::optional<Qt::CursorShape> DrawTool::cursor_at(QPointF) const {
  return in_hand() ? std::optional(Qt::CrossCursor) : std::nullopt;
}

void DrawTool::hover(QPointF pixel, Qt::KeyboardModifiers) {
  if (in_hand()) set_pen(view().to_cm(pixel));
}

QString DrawTool::stop_name(int) const {
  return spoken("{1} Pen at x {2}, y {3} cm. {4}",
                {how_to(), QString::fromStdString(format_number(pen_.x, 1)),
                 QString::fromStdString(format_number(pen_.y, 1)), words().join(" ")});
}

std::optional<int> DrawTool::stop_at(QPointF) const {
  return in_hand() ? std::optional(0) : std::nullopt;
}

bool DrawTool::key(int, const QKeyEvent& event) {
  if (const auto step = arrow_step_cm(event)) {
    set_pen(pen_ + *step);
    pen_moved();
    return true;
  }
  switch (event.key()) {
    case Qt::Key_Space:
      act_at_pen();
      break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
      finish();
      break;
    case Qt::Key_Backspace:
      return take_back();
    case Qt::Key_Escape:
      if (!is_begun() && !desk_.held()) return false;
      give_up();
      desk_.abandon();
      break;
    default:
      return false;
  }
  view().update();
  return true;
}

void DrawTool::paint(QPainter& painter, std::optional<int> focused) const {
  if (!in_hand()) return;
  paint_drawing(painter);
  if (focused) paint_pen(painter);
  const QStringList lines = words();
  if (lines.isEmpty()) return;
  const QPointF at = view().to_pixels(pen_);
  paint_words(painter, view(), lines,
              words_are_a_fault() ? dressing::Severity::stop : dressing::Severity::note,
              QRectF(at, QSizeF()).adjusted(-24, -24, 24, 24));
}

void DrawTool::paint_pen(QPainter& painter) const {
  const QPointF at = view().to_pixels(pen_);
  const QColor halo = printing::to_qcolor(report::ground_colour(view().ground()));
  const QColor ink = view().palette().color(QPalette::Highlight);
  for (const auto& [colour, width] : {std::pair(halo, 5.0), std::pair(ink, 2.0)}) {
    painter.setPen(QPen(colour, width));
    painter.drawLine(at - QPointF(pen_px, 0), at + QPointF(pen_px, 0));
    painter.drawLine(at - QPointF(0, pen_px), at + QPointF(0, pen_px));
  }
}

void DrawTool::paint_line(QPainter& painter, const Ring& line, bool closed, bool faulty) const {
  if (line.empty()) return;
  const QColor halo = printing::to_qcolor(report::ground_colour(view().ground()));
  const QColor ink = faulty ? severity_ink(dressing::Severity::stop, view().palette())
                            : view().palette().color(QPalette::WindowText);
  painter.setBrush(Qt::NoBrush);
  QPainterPath path;
  path.addPolygon(on_view(view(), line));
  if (closed) path.closeSubpath();
  painter.strokePath(path, QPen(halo, 5));
  painter.strokePath(path, QPen(ink, 2, faulty ? Qt::DashLine : Qt::SolidLine));
}

}  // namespace drapewright::desktop
