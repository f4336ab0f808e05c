#include "app/desktop/canvas/viewport.h"

#include <algorithm>

namespace drapewright::desktop {

namespace {

constexpr double least_scale = 2;
constexpr double greatest_scale = 4000;
constexpr double least_extent_cm = 1;  ///< a single point is shown with a little around it

}  // namespace

QPointF Viewport::to_pixels(geometry::Point cm) const {
  return {origin_.x() + pixels_per_cm_ * cm.x, origin_.y() - pixels_per_cm_ * cm.y};
}

geometry::Point Viewport::to_cm(QPointF pixel) const {
  return {(pixel.x() - origin_.x()) / pixels_per_cm_, (origin_.y() - pixel.y()) / pixels_per_cm_};
}

QTransform Viewport::transform() const {
  return {pixels_per_cm_, 0, 0, -pixels_per_cm_, origin_.x(), origin_.y()};
}

void Viewport::pan(QPointF pixels) { origin_ += pixels; }

void Viewport::zoom_about(QPointF pixel, double factor) {
  const geometry::Point fixed = to_cm(pixel);
  pixels_per_cm_ = std::clamp(pixels_per_cm_ * factor, least_scale, greatest_scale);
  pan(pixel - to_pixels(fixed));
}

void Viewport::fit(const geometry::Box& box_cm, const QRectF& room) {
  const double width = std::max(box_cm.width(), least_extent_cm);
  const double height = std::max(box_cm.height(), least_extent_cm);
  pixels_per_cm_ = std::clamp(std::min(room.width() / width, room.height() / height), least_scale,
                              greatest_scale);
  pan(room.center() - to_pixels(0.5 * (box_cm.low + box_cm.high)));
}

}  // namespace drapewright::desktop
