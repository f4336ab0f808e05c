#include "app/desktop/tools/word_plate.h"

#include <QIcon>
#include <QPainter>
#include <algorithm>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/theme/marks.h"
#include "app/printing/pens.h"

namespace drapewright::desktop {
namespace {

constexpr double padding_px = 8;
constexpr double gap_px = 8;

QRectF placed(QSizeF size, const QRectF& beside, const QRectF& room) {
  const double middle_x = beside.center().x() - size.width() / 2;
  const double middle_y = beside.center().y() - size.height() / 2;
  const QPointF tries[] = {{beside.right() + gap_px, middle_y},
                           {beside.left() - gap_px - size.width(), middle_y},
                           {middle_x, beside.bottom() + gap_px},
                           {middle_x, beside.top() - gap_px - size.height()}};
  for (const QPointF& corner : tries) {
    if (room.contains(QRectF(corner, size))) return {corner, size};
  }
  QRectF box(tries[0], size);  // nowhere without covering something: as near as stays in sight
  box.moveLeft(
      std::clamp(box.left(), room.left(), std::max(room.left(), room.right() - size.width())));
  box.moveTop(
      std::clamp(box.top(), room.top(), std::max(room.top(), room.bottom() - size.height())));
  return box;
}

}  // namespace

void paint_words(QPainter& painter, const PlanView& view, const QStringList& lines,
                 dressing::Severity severity, const QRectF& beside) {
  painter.setFont(view.font());
  const QFontMetricsF metrics(view.font());
  double width = 0;
  for (const QString& line : lines) width = std::max(width, metrics.horizontalAdvance(line));
  const double mark = metrics.height();
  const QSizeF size(width + mark + 3 * padding_px,
                    metrics.lineSpacing() * static_cast<double>(lines.size()) + 2 * padding_px);
  const QRectF box = placed(size, beside, QRectF(view.rect()).adjusted(40, 40, -4, -4));
  const QColor ink = severity_ink(severity, view.palette());
  painter.setPen(QPen(ink, 1.5));
  painter.setBrush(printing::to_qcolor(report::ground_colour(view.ground())));
  painter.drawRoundedRect(box, 4, 4);
  const QIcon icon = severity_mark(severity, view.palette(), static_cast<int>(mark));
  icon.paint(&painter,
             QRectF(box.left() + padding_px, box.top() + padding_px, mark, mark).toRect());
  painter.setPen(ink);
  painter.drawText(box.adjusted(mark + 2 * padding_px, padding_px, 0, -padding_px),
                   Qt::AlignLeft | Qt::AlignTop, lines.join('\n'));
}

}  // namespace drapewright::desktop
