#pragma once

#include <QImage>
#include <QRectF>
#include <optional>

#include "core/geometry/shape.h"
#include "core/picture/picture.h"

namespace drapewright::desktop {

/// Where a photograph lies on the drawing. With a reference, as its calibration says, the tilt of
/// the camera taken out of it; without one 20 cm wide for looking at, and nothing can be measured.
class PhotoPlace {
 public:
  /// @throws InputError for a reference that gives no scale
  PhotoPlace(const QImage& image, const std::optional<picture::Reference>& reference);

  bool is_measured() const { return measured_; }
  /// The picture as it lies in the plane, and the part of the plane in cm that it fills (y up).
  const QImage& image() const { return laid_; }
  const geometry::Point& low() const { return low_; }
  const geometry::Point& high() const { return high_; }

  picture::Pixel to_pixel(geometry::Point cm) const;

 private:
  void lay_unmeasured(const QImage& image);
  void lay_measured(const QImage& image, const picture::Reference& reference);

  bool measured_ = false;
  QImage laid_;
  geometry::Point low_, high_;
  std::optional<picture::Reference> reference_;
  double cm_per_px_ = 1;
  QSize size_;
};

}  // namespace drapewright::desktop
