#include "app/desktop/photo/photo_layer.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/photo/photo_desk.h"
#include "app/printing/pens.h"

namespace drapewright::desktop {

void PhotoLayer::paint_under(QPainter& painter) const {
  const PhotoPlace* place = photo_.place();
  if (place == nullptr) return;
  const QRectF where(view_.to_pixels(place->low()), view_.to_pixels(place->high()));
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.setOpacity(photo_.strength());
  painter.drawImage(where.normalized(), place->image());
}

void PhotoLayer::paint(QPainter& painter, std::optional<int>) const {
  const geometry::Ring& marked = photo_.asked_about();
  if (marked.empty()) return;
  const QColor halo = printing::to_qcolor(report::ground_colour(view_.ground()));
  const QColor ink = view_.palette().color(QPalette::Highlight);
  painter.setBrush(Qt::NoBrush);
  for (const auto& [colour, width] : {std::pair(halo, 5.0), std::pair(ink, 2.0)}) {
    painter.setPen(QPen(colour, width));
    for (const geometry::Point& p : marked) painter.drawEllipse(view_.to_pixels(p), 6, 6);
    if (marked.size() == 2) {
      painter.drawLine(view_.to_pixels(marked[0]), view_.to_pixels(marked[1]));
    }
  }
}

}  // namespace drapewright::desktop
