#include <gtest/gtest.h>

#include "core/geometry/circle.h"
#include "core/geometry/distance.h"
#include "tests/reference/geometry/samples.h"
#include "tests/support/geos_shape.h"

namespace drapewright::geometry {
namespace {

constexpr double tolerance_cm = 1e-3;

TEST(AgainstGeos, LargestCircles) {
  for (const reference::Sample& sample : reference::samples()) {
    const auto circle = largest_inscribed_circle(sample.region, tolerance_cm);
    ASSERT_TRUE(circle) << sample.name;
    EXPECT_TRUE(contains(sample.region, circle->centre)) << sample.name;
    EXPECT_NEAR(reference::walked_distance(sample.region, circle->centre), circle->radius_cm, 1e-9)
        << sample.name;
    // Either may fall short of the true radius by its tolerance.
    const double geos = support::GeosShape(sample.region).inscribed_radius(tolerance_cm);
    EXPECT_NEAR(circle->radius_cm, geos, tolerance_cm) << sample.name;
  }
}

}  // namespace
}  // namespace drapewright::geometry
