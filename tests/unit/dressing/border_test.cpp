#include "core/dressing/border.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/geometry/clock.h"
#include "core/geometry/distance.h"
#include "core/geometry/shapes.h"

namespace drapewright::dressing {
namespace {

// Against a walk along the edge in steps of 0.005 cm.
TEST(BorderLeft, AgreesWithADenseWalk) {
  const geometry::Region wound = {{geometry::ellipse(9, 4, {}, 25, 60), {}}};
  const geometry::Region zones = {{geometry::rectangle(3, 2, {5.5, 4}, 40), {}},
                                  {geometry::circle(1.5, {-6, -3}, 24), {}}};
  const BorderLeft left = border_left(wound, zones, 5, {0, 0}, 90);
  std::array<double, 12> walked;
  walked.fill(5);
  const geometry::EdgeIndex edges(zones);
  const geometry::Ring& ring = wound[0].outer;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const geometry::Point step = ring[(i + 1) % ring.size()] - ring[i];
    const int steps = static_cast<int>(norm(step) / 0.005) + 1;
    for (int k = 0; k < steps; ++k) {
      const geometry::Point p = ring[i] + (static_cast<double>(k) / steps) * step;
      double& hour = walked[static_cast<std::size_t>(geometry::clock_sector({}, p, 90) - 1)];
      hour = std::min(hour, edges.nearest(p).distance_cm);
    }
  }
  for (std::size_t hour = 0; hour < 12; ++hour) {
    EXPECT_NEAR(left.by_clock_cm[hour], walked[hour], 6e-3) << "hour " << hour + 1;
  }
  EXPECT_EQ(left.least_cm, *std::ranges::min_element(left.by_clock_cm));
}

TEST(BorderLeft, IsWholeWithoutZones) {
  const BorderLeft left = border_left({{geometry::circle(4), {}}}, {}, 4, {}, 90);
  EXPECT_EQ(left.least_cm, 4);
  EXPECT_FALSE(left.least_line.has_value());
}

TEST(BorderLeft, TurnsWithTheHead) {
  const geometry::Region wound = {{geometry::circle(4), {}}};
  const geometry::Region zone = {{geometry::circle(2, {5, 0}), {}}};
  EXPECT_NEAR(border_left(wound, zone, 5, {}, 90).by_clock_cm[2], 2, 2e-3);
  EXPECT_NEAR(border_left(wound, zone, 5, {}, 0).by_clock_cm[11], 2, 2e-3);
}

}  // namespace
}  // namespace drapewright::dressing
