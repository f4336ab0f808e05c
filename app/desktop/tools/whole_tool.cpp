#include "app/desktop/tools/whole_tool.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/tools/arrow_keys.h"
#include "app/desktop/tools/outline_ink.h"
#include "app/desktop/tools/word_plate.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;

constexpr double handle_px = 13;
constexpr double frame_gap_px = 10;
constexpr double turn_reach_px = 34;
constexpr double least_factor = 0.05, most_factor = 20;
constexpr double hair_cm = 1e-6;

QString number(double value, int digits) {
  return QString::fromStdString(format_number(value, digits));
}

/// What the Edit menu calls a change; {1} is the shape.
const char* step_words(const Displacement& change) {
  if (change.turn_deg != 0) return term("turn {1}");
  return change.factor == 1 ? term("move {1}") : term("scale {1}");
}

}  // namespace

void WholeTool::plan_shown() {
  if (drag_ && !in_hand()) drag_.reset();
}

Point WholeTool::middle() const { return geometry::centroid(desk_.outline()); }

QRectF WholeTool::frame() const {
  const auto box = geometry::bounding_box(desk_.outline());
  return QRectF(desk_.view().to_pixels(box.low), desk_.view().to_pixels(box.high))
      .normalized()
      .adjusted(-frame_gap_px, -frame_gap_px, frame_gap_px, frame_gap_px);
}

QPointF WholeTool::turn_handle() const {
  const QRectF box = frame();
  return {box.center().x(), box.top() - turn_reach_px};
}

std::optional<WholeTool::Grip> WholeTool::grip_at(QPointF pixel) const {
  if (!in_hand()) return std::nullopt;
  const auto near = [&](QPointF handle) {
    return (handle - pixel).manhattanLength() <= 1.4 * handle_px;
  };
  const QRectF box = frame();
  if (near(turn_handle())) return Grip::turn;
  if (near(box.topLeft()) || near(box.topRight()) || near(box.bottomLeft()) ||
      near(box.bottomRight())) {
    return Grip::scale;
  }
  const bool inside =
      geometry::contains(geometry::Polygon{desk_.outline(), {}}, desk_.view().to_cm(pixel));
  return inside ? std::optional(Grip::inside) : std::nullopt;
}

std::optional<int> WholeTool::stop_at(QPointF pixel) const {
  return drag_ || grip_at(pixel) ? std::optional(0) : std::nullopt;
}

std::optional<Qt::CursorShape> WholeTool::cursor_at(QPointF pixel) const {
  if (drag_) return Qt::ClosedHandCursor;
  const auto grip = grip_at(pixel);
  if (!grip) return std::nullopt;
  return *grip == Grip::inside ? Qt::SizeAllCursor : Qt::PointingHandCursor;
}

bool WholeTool::press(QPointF pixel, Qt::MouseButton button) {
  const auto grip = grip_at(pixel);
  if (!grip || button != Qt::LeftButton) return false;
  drag_ = Drag{*grip, desk_.view().to_cm(pixel), {}};
  return true;
}

void WholeTool::drag(QPointF pixel, Qt::KeyboardModifiers) {
  if (!drag_) return;
  const Point at = desk_.view().to_cm(pixel), about = middle();
  const Point was = drag_->from_cm - about, now = at - about;
  switch (drag_->grip) {
    case Grip::inside:
      drag_->change.by_cm = at - drag_->from_cm;
      break;
    case Grip::turn:
      drag_->change.turn_deg =
          geometry::degrees(std::atan2(geometry::cross(was, now), geometry::dot(was, now)));
      break;
    case Grip::scale:
      drag_->change.factor = std::clamp(
          geometry::norm(now) / std::max(geometry::norm(was), hair_cm), least_factor, most_factor);
      break;
  }
  desk_.view().update();
}

void WholeTool::release() {
  const auto done = std::exchange(drag_, std::nullopt);
  desk_.view().update();
  if (!done) return;
  make(done->change, false);
}

void WholeTool::cancel() {
  drag_.reset();
  desk_.view().update();
}

void WholeTool::make(const Displacement& change, bool by_key) {
  if (change.by_cm == Point{} && change.turn_deg == 0 && change.factor == 1) return;
  const ShapeRef ref = desk_.target().ref;
  const Point about = middle();
  const char* what = step_words(change);
  desk_.change(
      spoken(what, {title_of(desk_.document().value(), ref)}),
      [&](wound::Case& value) -> std::optional<QString> {
        place_anew(value, ref, about, change);
        const auto box = geometry::bounding_box(outline_of(value, ref));
        const double size = std::max(box.width(), box.height());
        if (size > 100) return spoken("An outline is 100 cm across at most.");
        if (size < 0.2) return spoken("An outline is 2 mm across at least.");
        return std::nullopt;
      },
      by_key ? QString("%1 %2 %3").arg(QString(what)).arg(ref.index).arg(ref.island) : QString());
}

QString WholeTool::stop_name(int) const {
  const auto box = geometry::bounding_box(desk_.outline());
  return spoken(
      "{1}, {2} x {3} cm. Arrow keys move it 1 mm, with Shift 1 cm; comma and full stop "
      "turn it, [ and ] scale it.",
      {title_of(desk_.document().value(), desk_.target()), number(box.width(), 1),
       number(box.height(), 1)});
}

bool WholeTool::key(int, const QKeyEvent& event) {
  if (!in_hand() || drag_) return event.key() != Qt::Key_Escape;
  if (const auto step = arrow_step_cm(event)) {
    make({.by_cm = *step}, true);
    return true;
  }
  switch (event.key()) {
    case Qt::Key_Comma:
      make({.turn_deg = 1}, true);
      return true;
    case Qt::Key_Period:
      make({.turn_deg = -1}, true);
      return true;
    case Qt::Key_BracketLeft:
      make({.factor = 1 / 1.01}, true);
      return true;
    case Qt::Key_BracketRight:
      make({.factor = 1.01}, true);
      return true;
    default:
      return false;
  }
}

void WholeTool::paint(QPainter& painter, std::optional<int> focused) const {
  if (!in_hand()) return;
  const PlanView& view = desk_.view();
  const QColor ink = view.palette().color(focused ? QPalette::Highlight : QPalette::WindowText);
  painter.setPen(QPen(ink, focused ? 2.5 : 1.5));
  if (drag_) {
    const QPolygonF polygon = on_view(view, placed(desk_.outline(), middle(), drag_->change));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(polygon);
    QStringList words;
    if (drag_->grip == Grip::inside) {
      words << spoken("moved {1}, {2} cm",
                      {number(drag_->change.by_cm.x, 1), number(drag_->change.by_cm.y, 1)});
    } else if (drag_->grip == Grip::turn) {
      words << spoken("turned {1}\u00b0", {number(drag_->change.turn_deg, 0)});
    } else {
      words << QString("%1 %").arg(number(100 * drag_->change.factor, 0));
    }
    return paint_words(painter, view, words, dressing::Severity::note, polygon.boundingRect());
  }
  const QRectF box = frame();
  painter.setBrush(Qt::NoBrush);
  painter.drawRect(box);
  painter.drawLine(QPointF(box.center().x(), box.top()), turn_handle());
  painter.setBrush(view.palette().color(QPalette::Base));
  painter.drawEllipse(turn_handle(), 7, 7);
  for (const QPointF& corner :
       {box.topLeft(), box.topRight(), box.bottomLeft(), box.bottomRight()}) {
    painter.drawRect(QRectF(corner.x() - 6, corner.y() - 6, 12, 12));
  }
}

}  // namespace drapewright::desktop
