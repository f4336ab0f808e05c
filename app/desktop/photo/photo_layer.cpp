#include "app/desktop/photo/photo_layer.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/photo/photo_desk.h"

namespace drapewright::desktop {

void PhotoLayer::paint_under(QPainter& painter) const {
  const PhotoPlace* place = photo_.place();
  if (place == nullptr) return;
  const QRectF where(view_.to_pixels(place->low()), view_.to_pixels(place->high()));
  painter.setRenderHint(QPainter::SmoothPixmapTransform);
  painter.setOpacity(photo_.strength());
  painter.drawImage(where.normalized(), place->image());
}

}  // namespace drapewright::desktop
