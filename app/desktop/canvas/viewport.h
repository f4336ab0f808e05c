#pragma once

#include <QPointF>
#include <QRectF>
#include <QTransform>

#include "core/geometry/measures.h"
#include "core/geometry/shape.h"

namespace drapewright::desktop {

/// Which part of the drawing is seen, and how large: the map between cm (y up) and pixels.
class Viewport {
 public:
  double pixels_per_cm() const { return pixels_per_cm_; }
  QPointF to_pixels(geometry::Point cm) const;
  geometry::Point to_cm(QPointF pixel) const;
  QTransform transform() const;  ///< from cm to pixels

  void pan(QPointF pixels);
  /// The drawing's point under `pixel` stays under it. The scale stays within 2 to 4000 px/cm.
  void zoom_about(QPointF pixel, double factor);
  /// As large as fits the room, in its middle.
  void fit(const geometry::Box& box_cm, const QRectF& room);

 private:
  double pixels_per_cm_ = 38;
  QPointF origin_;  ///< where (0, 0) cm lies
};

}  // namespace drapewright::desktop
