#include "app/desktop/tools/held_mark.h"

#include <QPainter>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/theme/marks.h"
#include "app/desktop/tools/outline_ink.h"

namespace drapewright::desktop {

void HeldMark::paint(QPainter& painter, std::optional<int>) const {
  const auto& held = desk_.held();
  if (!held) return;
  const PlanView& view = desk_.view();
  const QColor ink = severity_ink(dressing::Severity::stop, view.palette());
  if (!held->loops.empty()) {
    QColor fill = ink;
    fill.setAlphaF(0.15F);
    painter.setPen(Qt::NoPen);
    painter.setBrush(fill);
    painter.drawPolygon(on_view(view, held->loops.front()));
  }
  painter.setBrush(Qt::NoBrush);
  painter.setPen(QPen(ink, 2.5, Qt::DashLine));
  painter.drawPolygon(on_view(view, held->outline));
  tell_crossing(painter, view, held->crossing);
}

}  // namespace drapewright::desktop
