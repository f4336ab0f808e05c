#include "app/desktop/tools/held_mark.h"

#include <QPolygonF>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/theme/marks.h"
#include "app/desktop/tools/word_plate.h"

namespace drapewright::desktop {

void HeldMark::paint(QPainter& painter, std::optional<int>) const {
  const auto& held = desk_.held();
  if (!held) return;
  const PlanView& view = desk_.view();
  const auto polygon = [&](const geometry::Ring& ring) {
    QPolygonF result;
    for (const auto& p : ring) result << view.to_pixels(p);
    return result;
  };
  const QColor ink = severity_ink(dressing::Severity::stop, view.palette());
  if (!held->loops.empty()) {
    QColor fill = ink;
    fill.setAlphaF(0.15F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    painter.drawPolygon(polygon(held->loops.front()));
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(ink, 2.5, Qt::DashLine));
  painter.drawPolygon(polygon(held->outline));
  const QPointF at = view.to_pixels(held->crossing);
  painter.setPen(QPen(ink, 3));
  painter.drawEllipse(at, 9, 9);
  paint_words(painter, view, {"The outline crosses itself here."}, dressing::Severity::stop,
              QRectF(at, QSizeF()).adjusted(-14, -14, 14, 14));
}

}  // namespace drapewright::desktop
