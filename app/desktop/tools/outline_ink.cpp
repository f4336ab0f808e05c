#include "app/desktop/tools/outline_ink.h"

#include <QPainter>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/theme/marks.h"
#include "app/desktop/tools/word_plate.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr double ring_px = 9, arm_px = 6, clear_px = 14;

}  // namespace

QPolygonF on_view(const PlanView& view, const geometry::Ring& line) {
  QPolygonF result;
  for (const geometry::Point& p : line) result << view.to_pixels(p);
  return result;
}

void paint_crossing(QPainter& painter, const PlanView& view, geometry::Point at) {
  const QPointF middle = view.to_pixels(at);
  painter.setPen(QPen(severity_ink(dressing::Severity::stop, view.palette()), 3));
  painter.setBrush(Qt::NoBrush);
  painter.drawEllipse(middle, ring_px, ring_px);
  painter.drawLine(middle - QPointF(arm_px, arm_px), middle + QPointF(arm_px, arm_px));
  painter.drawLine(middle - QPointF(arm_px, -arm_px), middle + QPointF(arm_px, -arm_px));
}

void tell_crossing(QPainter& painter, const PlanView& view, geometry::Point at) {
  paint_crossing(painter, view, at);
  paint_words(
      painter, view, {spoken("The outline crosses itself here.")}, dressing::Severity::stop,
      QRectF(view.to_pixels(at), QSizeF()).adjusted(-clear_px, -clear_px, clear_px, clear_px));
}

}  // namespace drapewright::desktop
