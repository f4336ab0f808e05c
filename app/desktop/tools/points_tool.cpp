#include "app/desktop/tools/points_tool.h"

#include <utility>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/theme/marks.h"
#include "app/desktop/tools/arrow_keys.h"
#include "app/desktop/tools/outline_ink.h"
#include "app/printing/pens.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/tracing/edge_place.h"
#include "core/tracing/loops.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

constexpr double corner_px = 12;  ///< a target of 24 px, the least that WCAG 2.2 asks for
constexpr double edge_px = 8;
constexpr int drag_threshold_px = 3;
constexpr std::size_t fewest_corners = 3;
constexpr int most_handles = 400;  ///< with more in view they would cover the edge: zoom in

}  // namespace

void PointsTool::plan_shown() {
  if (drag_ && !in_hand()) drag_.reset();
}

std::optional<std::size_t> PointsTool::corner_at(QPointF pixel) const {
  if (!in_hand()) return std::nullopt;
  const Ring& ring = desk_.outline();
  const Point at = desk_.view().to_cm(pixel);
  double nearest = corner_px / desk_.view().pixels_per_cm();
  std::optional<std::size_t> found;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const double far = geometry::distance(ring[i], at);
    if (far > nearest) continue;
    nearest = far;
    found = i;
  }
  return found;
}

std::optional<int> PointsTool::stop_at(QPointF pixel) const {
  if (drag_) return static_cast<int>(drag_->corner);
  const auto corner = corner_at(pixel);
  return corner ? std::optional(static_cast<int>(*corner)) : std::nullopt;
}

std::optional<Qt::CursorShape> PointsTool::cursor_at(QPointF pixel) const {
  if (drag_) return Qt::ClosedHandCursor;
  return corner_at(pixel) ? std::optional(Qt::PointingHandCursor) : std::nullopt;
}

bool PointsTool::press(QPointF pixel, Qt::MouseButton button) {
  if (!in_hand()) return false;
  desk_.abandon();
  const auto corner = corner_at(pixel);
  if (button == Qt::RightButton && corner) {
    remove_corner(*corner);
    return true;
  }
  if (button != Qt::LeftButton) return false;
  Ring ring = desk_.outline();
  if (corner) {
    drag_ = Drag{*corner, false, false, pixel, std::move(ring), {}};
    return true;
  }
  const auto place = tracing::nearest_on_edge(ring, desk_.view().to_cm(pixel));
  if (place.distance_cm * desk_.view().pixels_per_cm() > edge_px) return false;
  ring.insert(ring.begin() + static_cast<std::ptrdiff_t>(place.edge) + 1, place.at);
  drag_ = Drag{place.edge + 1, true, false, pixel, std::move(ring), {}};
  return true;
}

void PointsTool::drag(QPointF pixel, Qt::KeyboardModifiers) {
  if (!drag_) return;
  if (!drag_->moved && (pixel - drag_->pressed_at).manhattanLength() < drag_threshold_px) return;
  drag_->moved = true;
  drag_->ring[drag_->corner] = desk_.view().to_cm(pixel);
  drag_->crossing = tracing::crossing_at_corner(drag_->ring, drag_->corner);
  desk_.view().update();
}

void PointsTool::release() {
  const auto done = std::exchange(drag_, std::nullopt);
  desk_.view().update();
  if (!done || (!done->moved && !done->inserted)) return;
  desk_.offer(done->ring, done->inserted ? spoken("insert point") : spoken("move point"));
}

void PointsTool::cancel() {
  drag_.reset();
  desk_.view().update();
}

int PointsTool::stops() const { return in_hand() ? static_cast<int>(desk_.outline().size()) : 0; }

QString PointsTool::stop_name(int stop) const {
  const Ring& ring = desk_.outline();
  const auto& p = ring.at(static_cast<std::size_t>(stop));
  return spoken(
      "Point {1} of {2} at x {3}, y {4} cm. Arrow keys move it 1 mm, with Shift 1 cm; "
      "Insert puts one after it, Delete takes it out.",
      {stop + 1, ring.size(), QString::fromStdString(format_number(p.x, 1)),
       QString::fromStdString(format_number(p.y, 1))});
}

bool PointsTool::key(int stop, const QKeyEvent& event) {
  if (drag_ || !in_hand()) return event.key() != Qt::Key_Escape;
  const auto corner = static_cast<std::size_t>(stop);
  if (const auto step = arrow_step_cm(event)) {
    move_corner(corner, *step);
    return true;
  }
  switch (event.key()) {
    case Qt::Key_Insert:
      insert_after(corner);
      return true;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
      remove_corner(corner);
      return true;
    default:
      return false;
  }
}

void PointsTool::move_corner(std::size_t corner, Point by) {
  Ring ring = desk_.outline();
  ring[corner] = ring[corner] + by;
  if (tracing::crossing_at_corner(ring, corner)) {
    return desk_.say(spoken("There the outline would cross itself: the point stays."));
  }
  const ShapeRef ref = desk_.target().ref;
  desk_.change(
      spoken("move point"),
      [&](wound::Case& value) -> std::optional<QString> {
        enter_outline(value, desk_.target(), ring);
        return std::nullopt;
      },
      QString("point %1 %2 %3").arg(ref.index).arg(ref.island).arg(corner));
}

void PointsTool::insert_after(std::size_t corner) {
  Ring ring = desk_.outline();
  const Point middle = 0.5 * (ring[corner] + ring[(corner + 1) % ring.size()]);
  ring.insert(ring.begin() + static_cast<std::ptrdiff_t>(corner) + 1, middle);
  desk_.offer(std::move(ring), spoken("insert point"));
}

void PointsTool::remove_corner(std::size_t corner) {
  Ring ring = desk_.outline();
  if (ring.size() <= fewest_corners)
    return desk_.say(spoken("An outline has three corners or more."));
  ring.erase(ring.begin() + static_cast<std::ptrdiff_t>(corner));
  desk_.offer(std::move(ring), spoken("remove point"));
}

void PointsTool::paint_corners(QPainter& painter, const Ring& ring,
                               std::optional<int> focused) const {
  const PlanView& view = desk_.view();
  const QRectF seen = QRectF(view.rect()).adjusted(-corner_px, -corner_px, corner_px, corner_px);
  std::vector<std::pair<int, QPointF>> in_sight;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const QPointF at = view.to_pixels(ring[i]);
    if (seen.contains(at)) in_sight.emplace_back(static_cast<int>(i), at);
  }
  painter.setPen(QPen(view.palette().color(QPalette::WindowText), 1.5));
  painter.setBrush(view.palette().color(QPalette::Base));
  const bool few = std::ssize(in_sight) <= most_handles;
  for (const auto& [index, at] : in_sight) {
    if (focused == index) continue;
    if (few) painter.drawRect(QRectF(at.x() - 3, at.y() - 3, 6, 6));
  }
  if (!focused || *focused >= static_cast<int>(ring.size())) return;
  painter.setPen(QPen(view.palette().color(QPalette::Highlight), 3));
  painter.drawEllipse(view.to_pixels(ring[static_cast<std::size_t>(*focused)]), 7, 7);
}

void PointsTool::paint(QPainter& painter, std::optional<int> focused) const {
  if (!in_hand()) return;
  if (!drag_) return paint_corners(painter, desk_.outline(), focused);
  const PlanView& view = desk_.view();
  const auto severity = drag_->crossing ? dressing::Severity::stop : dressing::Severity::note;
  painter.setPen(QPen(severity_ink(severity, view.palette()), 2.5));
  painter.setBrush(Qt::NoBrush);
  painter.drawPolygon(on_view(view, drag_->ring));
  paint_corners(painter, drag_->ring, static_cast<int>(drag_->corner));
  if (drag_->crossing) tell_crossing(painter, view, *drag_->crossing);
}

}  // namespace drapewright::desktop
