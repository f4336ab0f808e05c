// The largest aperture beside OpenCV's distance transform of a picture of the wound.

#include <gtest/gtest.h>

#include <cmath>
#include <opencv2/imgproc.hpp>

#include "core/dressing/plan.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "tests/support/made_outlines.h"

namespace drapewright::dressing {
namespace {

constexpr int pixels_per_cm = 60;

class Picture {
 public:
  explicit Picture(const geometry::Box& box)
      : low_(box.low - geometry::Point{0.1, 0.1}),
        pixels_(static_cast<int>((box.height() + 0.2) * pixels_per_cm),
                static_cast<int>((box.width() + 0.2) * pixels_per_cm), CV_8U, cv::Scalar(0)) {}

  void fill(const geometry::Ring& ring, int colour) {
    std::vector<cv::Point> corners;
    for (const geometry::Point p : ring) {
      corners.emplace_back(static_cast<int>(std::lround((p.x - low_.x) * pixels_per_cm)),
                           static_cast<int>(std::lround((p.y - low_.y) * pixels_per_cm)));
    }
    cv::fillPoly(pixels_, std::vector<std::vector<cv::Point>>{corners}, cv::Scalar(colour));
  }

  /// Keeps what is at least this far from the edge.
  void shrink(double by_cm) { pixels_ = depths() >= by_cm * pixels_per_cm; }

  double largest_diameter() const {
    double deepest = 0;
    cv::minMaxLoc(depths(), nullptr, &deepest);
    return 2 * deepest / pixels_per_cm;
  }

 private:
  cv::Mat depths() const {
    cv::Mat depth;
    cv::distanceTransform(pixels_, depth, cv::DIST_L2, cv::DIST_MASK_PRECISE);
    return depth;
  }

  geometry::Point low_;
  cv::Mat pixels_;
};

TEST(AgainstOpenCv, LargestApertures) {
  support::OutlineMaker maker(31);
  for (int i = 0; i < 40; ++i) {
    const geometry::Polygon outline =
        i % 4 == 0 ? maker.with_island(3, 0.6, maker.between(0.3, 1.2))
                   : geometry::Polygon{maker.blob(80, maker.between(1.5, 4)), {}};
    const geometry::Point at = outline.outer[static_cast<std::size_t>(maker.whole(0, 79))];
    const geometry::Ring zone = geometry::circle(maker.between(0.5, 4), at, 60);
    wound::Case value{.label = "made"};
    value.assessments.push_back({.date = "2026-01-01"});
    value.current().wounds.push_back(
        {.id = "A", .outline_cm = outline.outer, .islands_cm = outline.holes});
    value.current().skin_zones.push_back({.kind = wound::ZoneKind::no_port, .outline_cm = zone});

    Picture picture(geometry::bounding_box(outline.outer));
    picture.fill(outline.outer, 255);
    for (const geometry::Ring& island : outline.holes) picture.fill(island, 0);
    picture.shrink(value.dressing.inset_cm);
    picture.fill(zone, 0);
    // Two edges on either side of a diameter, each drawn to a pixel, twice.
    EXPECT_NEAR(plan_dressing(value).drapes[0].port.largest_aperture.value,
                picture.largest_diameter(), 4.0 / pixels_per_cm)
        << i;
  }
}

}  // namespace
}  // namespace drapewright::dressing
