#pragma once

#include <QImage>
#include <QPoint>
#include <memory>
#include <vector>

namespace drapewright::desktop {

/// Follows the strongest edge of a picture from one place to another (a live wire: Mortensen and
/// Barrett, Intelligent Scissors for Image Composition, 1995; OpenCV's implementation). It finds
/// contrast, not wounds: whoever draws looks at every stretch.
class EdgeFinder {
 public:
  /// Prepares the picture, which takes tens to hundreds of milliseconds.
  explicit EdgeFinder(const QImage& image);
  ~EdgeFinder();

  QSize size() const;
  /// Paths begin here from now on; takes as long again. Places outside are brought to the border.
  void start_at(QPoint place);
  /// From the start to a place, both included, pixel by pixel. @pre start_at was called
  std::vector<QPoint> path_to(QPoint place) const;

 private:
  struct Impl;
  std::unique_ptr<Impl> impl_;
};

}  // namespace drapewright::desktop
