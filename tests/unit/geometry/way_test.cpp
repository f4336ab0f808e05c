#include "core/geometry/way.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

Region square(double side, Point centre) { return {{rectangle(side, side, centre), {}}}; }

TEST(Way, IsStraightWhereNothingBarsIt) {
  const auto way = shortest_way(square(2, {0, 0}), square(2, {6, 0}), {});
  ASSERT_TRUE(way.has_value());
  EXPECT_NEAR(way->length_cm, 4, 1e-9);
}

TEST(Way, IsAPointWhereTheEndsTouch) {
  const auto way = shortest_way(square(2, {0, 0}), square(2, {2, 0}), {});
  ASSERT_TRUE(way.has_value());
  EXPECT_EQ(way->length_cm, 0);
  EXPECT_EQ(way->points.size(), 1u);
}

// From x = 1 to x = 5 round a wall at x = 3 that reaches up to y = 3 and down to y = -5: over the
// top from the squares' upper corners at y = 1.
TEST(Way, GoesRoundTheNearerEndOfAWall) {
  const Region wall = {{rectangle(0.2, 8, {3, -1}), {}}};
  const auto way = shortest_way(square(2, {0, 0}), square(2, {6, 0}), wall);
  ASSERT_TRUE(way.has_value());
  const double expected = 2 * std::hypot(1.9, 2) + 0.2;
  EXPECT_GE(way->length_cm, expected - 1e-6);
  EXPECT_NEAR(way->length_cm, expected, 0.01);
  for (std::size_t i = 1; i < way->points.size(); ++i) {
    const Ring step = rectangle(distance(way->points[i - 1], way->points[i]), 1e-4,
                                0.5 * (way->points[i - 1] + way->points[i]),
                                direction_deg(way->points[i - 1], way->points[i]));
    EXPECT_LT(area(intersect({{step, {}}}, wall)), 1e-6);
  }
}

// The detour round the first wall runs into a second one that the straight way does not meet.
TEST(Way, MindsObstaclesThatOnlyADetourMeets) {
  const Region walls = {{rectangle(0.2, 8, {3, -1}), {}}, {rectangle(3, 0.2, {3, 3.5}), {}}};
  const auto way = shortest_way(square(2, {0, 0}), square(2, {6, 0}), walls);
  ASSERT_TRUE(way.has_value());
  EXPECT_NEAR(way->length_cm, 2 * std::hypot(1.9, 2) + 0.2, 0.01) << "between the two";
  const Region closed = {{rectangle(0.2, 8, {3, -1}), {}}, {rectangle(3, 1, {3, 3.2}), {}}};
  const auto around = shortest_way(square(2, {0, 0}), square(2, {6, 0}), closed);
  ASSERT_TRUE(around.has_value());
  EXPECT_GT(around->length_cm, way->length_cm + 0.3);
  for (std::size_t i = 1; i < around->points.size(); ++i) {
    const Ring step = rectangle(distance(around->points[i - 1], around->points[i]), 1e-4,
                                0.5 * (around->points[i - 1] + around->points[i]),
                                direction_deg(around->points[i - 1], around->points[i]));
    EXPECT_LT(area(intersect({{step, {}}}, closed)), 1e-6);
  }
}

TEST(Way, HasNoneOutOfAClosedRing) {
  Polygon ring{circle(6), {circle(5)}};
  const Region fence = subtract({{ring.outer, {}}}, {{ring.holes[0], {}}});
  EXPECT_FALSE(shortest_way(square(1, {0, 0}), square(1, {8, 0}), fence).has_value());
}

TEST(Way, RefusesEmptyEnds) {
  EXPECT_THROW(shortest_way({}, square(1, {0, 0}), {}), std::invalid_argument);
  EXPECT_THROW(shortest_way(square(1, {0, 0}), square(1, {3, 0}), {}, 0), std::invalid_argument);
}

TEST(LeastWidth, IsThatOfTheNarrowestPlaceBetweenParallels) {
  EXPECT_NEAR(least_width(rectangle(7, 2, {1, 1}, 33)), 2, 1e-9);
  EXPECT_NEAR(least_width(circle(4)), 4, 1e-3);
  const Ring triangle = {{0, 0}, {4, 0}, {2, 2 * std::sqrt(3.0)}};
  EXPECT_NEAR(least_width(triangle), 2 * std::sqrt(3.0), 1e-9);
  EXPECT_EQ(least_width(Ring{{0, 0}, {1, 1}}), 0);
}

}  // namespace
}  // namespace drapewright::geometry
