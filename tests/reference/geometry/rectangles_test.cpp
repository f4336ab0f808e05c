#include <gtest/gtest.h>

#include <opencv2/imgproc.hpp>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"
#include "core/geometry/rectangle.h"
#include "core/geometry/shapes.h"
#include "tests/reference/geometry/samples.h"

namespace drapewright::geometry {
namespace {

double opencv_area(const std::vector<Point>& points, Point middle) {
  std::vector<cv::Point2f> floats;
  for (const Point& p : points) {
    floats.emplace_back(static_cast<float>(p.x - middle.x), static_cast<float>(p.y - middle.y));
  }
  const cv::RotatedRect rectangle = cv::minAreaRect(floats);
  return static_cast<double>(rectangle.size.width) * static_cast<double>(rectangle.size.height);
}

TEST(AgainstOpenCv, SmallestRectangles) {
  for (const reference::Sample& sample : reference::samples()) {
    const auto points = outer_points(sample.region);
    const Rectangle ours = smallest_enclosing_rectangle(points);
    const double area_cm2 = ours.length_cm * ours.width_cm;
    // OpenCV counts in single precision.
    EXPECT_NEAR(area_cm2 / opencv_area(points, ours.centre), 1, 1e-5) << sample.name;
    EXPECT_NEAR(extent_along(points, ours.angle_deg), ours.length_cm, 1e-9) << sample.name;
    EXPECT_NEAR(extent_along(points, ours.angle_deg + 90), ours.width_cm, 1e-9) << sample.name;
  }
}

TEST(AgainstOpenCv, ASheetOfTheSmallestRectanglesSizeJustHolds) {
  for (const reference::Sample& sample : reference::samples()) {
    const auto points = outer_points(sample.region);
    const Rectangle r = smallest_enclosing_rectangle(points);
    const double slack = tolerance::sheet_fit_cm;
    EXPECT_TRUE(place_in_rectangle(points, r.length_cm, r.width_cm, slack)) << sample.name;
    EXPECT_TRUE(place_in_rectangle(points, r.width_cm, r.length_cm, slack)) << sample.name;
    // No rectangle of less area holds it, so none of these sides can.
    EXPECT_FALSE(place_in_rectangle(points, r.length_cm, r.width_cm * (1 - 1e-6), slack))
        << sample.name;
  }
}

}  // namespace
}  // namespace drapewright::geometry
