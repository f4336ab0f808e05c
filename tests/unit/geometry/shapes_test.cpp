#include "core/geometry/shapes.h"

#include <gtest/gtest.h>

#include <limits>
#include <stdexcept>

#include "core/geometry/measures.h"

namespace drapewright::geometry {
namespace {

TEST(Shapes, AnEllipseHasItsAreaExactlyWhateverItsCorners) {
  for (const int corners : {8, 36, 360}) {
    EXPECT_NEAR(area(ellipse(8, 5, {3, -2}, 27, corners)), pi * 10, 1e-9) << corners;
  }
}

TEST(Shapes, AnEllipseLiesAlongItsAngle) {
  const Ring ring = ellipse(8, 5, {10, 20}, 30);
  EXPECT_NEAR(extent_along(ring, 30), 8, 1e-3);
  EXPECT_NEAR(extent_along(ring, 120), 5, 1e-3);
  EXPECT_NEAR(centroid(ring).x, 10, 1e-9);
  EXPECT_NEAR(centroid(ring).y, 20, 1e-9);
}

TEST(Shapes, RingsAreCounterClockwise) {
  EXPECT_GT(signed_area(ellipse(2, 1)), 0);
  EXPECT_NEAR(signed_area(rectangle(4, 3, {1, 1}, 200)), 12, 1e-12);
}

TEST(Shapes, SizesMustBePositiveAndFinite) {
  EXPECT_THROW(ellipse(0, 1), std::invalid_argument);
  EXPECT_THROW(ellipse(1, -1), std::invalid_argument);
  EXPECT_THROW(ellipse(1, 1, {}, 0, 7), std::invalid_argument);
  EXPECT_THROW(rectangle(1, std::numeric_limits<double>::infinity()), std::invalid_argument);
  EXPECT_THROW(circle(std::numeric_limits<double>::quiet_NaN()), std::invalid_argument);
}

TEST(Shapes, TurningAndMovingKeepMeasures) {
  const Region region{{rectangle(6, 4), {rectangle(1, 1)}}};
  const Region there = moved(turned(region, 33, {2, 9}), {-40, 17});
  EXPECT_NEAR(area(there), 23, 1e-9);
  EXPECT_NEAR(edge_length(there), 24, 1e-9);
  const Point quarter = turned({1, 0}, 90);
  EXPECT_NEAR(quarter.x, 0, 1e-15);
  EXPECT_NEAR(quarter.y, 1, 1e-15);
}

}  // namespace
}  // namespace drapewright::geometry
