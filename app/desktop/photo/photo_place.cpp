#include "app/desktop/photo/photo_place.h"

#include <QTransform>
#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/error.h"
#include "core/picture/calibration.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using picture::Calibration;
using picture::Pixel;

constexpr double unmeasured_width_cm = 20;
constexpr double farthest_cm = 60;  ///< a slanted picture reaches to the horizon; wounds do not
constexpr int most_laid_px = 1600;
constexpr int samples = 24;  ///< along each side and across, to find out what can be seen

struct Extent {
  Point low{1e9, 1e9}, high{-1e9, -1e9};
  void hold(Point p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
};

/// The part of the plane that the picture shows, as far as it is of use.
Extent extent_of(const Calibration& calibration, QSize size) {
  Extent extent;
  for (int i = 0; i <= samples; ++i) {
    for (int k = 0; k <= samples; ++k) {
      const Pixel pixel{double(size.width()) * i / samples, double(size.height()) * k / samples};
      try {
        const Point cm = calibration.to_cm(pixel);
        if (std::max(std::abs(cm.x), std::abs(cm.y)) < farthest_cm) extent.hold(cm);
      } catch (const InputError&) {
        continue;  // beyond the horizon
      }
    }
  }
  return extent;
}

/// From cm in the plane to pixels, as a matrix.
QTransform to_pixels(const Calibration& calibration) {
  const std::array<Point, 4> square{Point{-0.5, -0.5}, {0.5, -0.5}, {0.5, 0.5}, {-0.5, 0.5}};
  QPolygonF from, to;
  for (const Point& p : square) {
    const Pixel pixel = calibration.to_pixel(p);
    from << QPointF(p.x, p.y);
    to << QPointF(pixel.x, pixel.y);
  }
  QTransform result;
  QTransform::quadToQuad(from, to, result);
  return result;
}

/// The picture laid out in the plane: each of its pixels asked for by where it lies.
QImage laid_out(const QImage& image, const QTransform& to_pixel, Point low, Point high,
                double px_per_cm) {
  const int width = std::max(1, static_cast<int>((high.x - low.x) * px_per_cm));
  const int height = std::max(1, static_cast<int>((high.y - low.y) * px_per_cm));
  QImage laid(width, height, QImage::Format_ARGB32_Premultiplied);
  laid.fill(Qt::transparent);
  for (int row = 0; row < height; ++row) {
    auto* line = reinterpret_cast<QRgb*>(laid.scanLine(row));
    const double y = high.y - (row + 0.5) / px_per_cm;
    for (int column = 0; column < width; ++column) {
      const double x = low.x + (column + 0.5) / px_per_cm;
      const double w = to_pixel.m13() * x + to_pixel.m23() * y + to_pixel.m33();
      if (w <= 0) continue;
      const int px = static_cast<int>(
          std::floor((to_pixel.m11() * x + to_pixel.m21() * y + to_pixel.m31()) / w));
      const int py = static_cast<int>(
          std::floor((to_pixel.m12() * x + to_pixel.m22() * y + to_pixel.m32()) / w));
      if (px < 0 || py < 0 || px >= image.width() || py >= image.height()) continue;
      line[column] = reinterpret_cast<const QRgb*>(image.constScanLine(py))[px] | 0xff000000U;
    }
  }
  return laid;
}

}  // namespace

PhotoPlace::PhotoPlace(const QImage& image, const std::optional<picture::Reference>& reference)
    : measured_(reference.has_value()), reference_(reference), size_(image.size()) {
  reference ? lay_measured(image, *reference) : lay_unmeasured(image);
}

void PhotoPlace::lay_unmeasured(const QImage& image) {
  cm_per_px_ = unmeasured_width_cm / image.width();
  high_ = {unmeasured_width_cm / 2, image.height() * cm_per_px_ / 2};
  low_ = {-high_.x, -high_.y};
  laid_ = image.width() > most_laid_px ? image.scaledToWidth(most_laid_px, Qt::SmoothTransformation)
                                       : image;
}

void PhotoPlace::lay_measured(const QImage& image, const picture::Reference& reference) {
  const Calibration calibration(reference);
  const Extent extent = extent_of(calibration, image.size());
  low_ = extent.low;
  high_ = extent.high;
  const double longest = std::max(high_.x - low_.x, high_.y - low_.y);
  laid_ = laid_out(image, to_pixels(calibration), low_, high_, most_laid_px / longest);
}

Pixel PhotoPlace::to_pixel(Point cm) const {
  if (reference_) return Calibration(*reference_).to_pixel(cm);
  return {cm.x / cm_per_px_ + size_.width() / 2.0, size_.height() / 2.0 - cm.y / cm_per_px_};
}

}  // namespace drapewright::desktop
