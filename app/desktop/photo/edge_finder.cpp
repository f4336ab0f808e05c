#include "app/desktop/photo/edge_finder.h"

#include <algorithm>
#include <opencv2/imgproc.hpp>
#include <opencv2/imgproc/segmentation.hpp>

namespace drapewright::desktop {
namespace {

// Noise of a camera is finer than a wound's edge: a little blur before, and edges by contrast
// (Canny's thresholds) and by steepness alike. Tried on the drawn pictures of the edge bench.
constexpr double blur_px = 1.2;
constexpr double weak_contrast = 30, strong_contrast = 90;

/// The picture in grey, in memory of its own.
cv::Mat grey(const QImage& image) {
  const QImage plain = image.convertToFormat(QImage::Format_Grayscale8);
  const cv::Mat shared(plain.height(), plain.width(), CV_8UC1,
                       const_cast<uchar*>(plain.constBits()),
                       static_cast<std::size_t>(plain.bytesPerLine()));
  cv::Mat smooth;
  cv::GaussianBlur(shared, smooth, {}, blur_px);
  return smooth;
}

}  // namespace

struct EdgeFinder::Impl {
  cv::segmentation::IntelligentScissorsMB scissors;
  QSize size;

  cv::Point inside(QPoint place) const {
    return {std::clamp(place.x(), 0, size.width() - 1),
            std::clamp(place.y(), 0, size.height() - 1)};
  }
};

EdgeFinder::EdgeFinder(const QImage& image) : impl_(std::make_unique<Impl>()) {
  impl_->size = image.size();
  impl_->scissors.setEdgeFeatureCannyParameters(weak_contrast, strong_contrast);
  impl_->scissors.setGradientMagnitudeMaxLimit(200);
  impl_->scissors.applyImage(grey(image));
}

EdgeFinder::~EdgeFinder() = default;

QSize EdgeFinder::size() const { return impl_->size; }

void EdgeFinder::start_at(QPoint place) { impl_->scissors.buildMap(impl_->inside(place)); }

std::vector<QPoint> EdgeFinder::path_to(QPoint place) const {
  std::vector<cv::Point> contour;
  impl_->scissors.getContour(impl_->inside(place), contour);
  std::vector<QPoint> path;
  path.reserve(contour.size());
  for (const cv::Point& p : contour) path.emplace_back(p.x, p.y);
  return path;
}

}  // namespace drapewright::desktop
