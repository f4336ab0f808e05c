#include "core/geometry/clock.h"

#include <gtest/gtest.h>

#include "core/geometry/shape.h"

namespace drapewright::geometry {
namespace {

constexpr double head_up = 90;

// The clock method: 12 to the head, 6 to the feet, hours run clockwise (trade journal).
TEST(Clock, HoursRunClockwiseFromTheHead) {
  EXPECT_DOUBLE_EQ(clock_hour({}, {0, 1}, head_up), 12);
  EXPECT_DOUBLE_EQ(clock_hour({}, {1, 0}, head_up), 3);
  EXPECT_DOUBLE_EQ(clock_hour({}, {0, -1}, head_up), 6);
  EXPECT_DOUBLE_EQ(clock_hour({}, {-1, 0}, head_up), 9);
}

TEST(Clock, TurnsWithTheHead) {
  EXPECT_DOUBLE_EQ(clock_hour({}, {1, 0}, 0), 12);
  EXPECT_DOUBLE_EQ(clock_hour({}, {0, 1}, 0), 9);
  EXPECT_DOUBLE_EQ(clock_hour({5, 5}, {5, 4}, 0), 3);
}

TEST(Clock, DirectionIsTheInverseOfTheHour) {
  for (double hour = 0.25; hour <= 12; hour += 0.25) {
    for (const double head : {0.0, 90.0, 213.0, -90.0}) {
      const double direction = radians(clock_direction_deg(hour, head));
      EXPECT_NEAR(clock_hour({}, {std::cos(direction), std::sin(direction)}, head), hour, 1e-9);
      EXPECT_GE(clock_direction_deg(hour, head), 0);
      EXPECT_LT(clock_direction_deg(hour, head), 360);
    }
  }
}

TEST(Clock, SectorsReachHalfAnHourToEitherSide) {
  const auto sector_at = [](double hour) {
    const double direction = radians(clock_direction_deg(hour, head_up));
    return clock_sector({}, {std::cos(direction), std::sin(direction)}, head_up);
  };
  EXPECT_EQ(sector_at(12), 12);
  EXPECT_EQ(sector_at(0.4), 12);
  EXPECT_EQ(sector_at(11.6), 12);
  EXPECT_EQ(sector_at(0.6), 1);
  EXPECT_EQ(sector_at(6.4), 6);
}

TEST(Clock, SpansGoClockwise) {
  EXPECT_DOUBLE_EQ(clock_span(2, 5), 3);
  EXPECT_DOUBLE_EQ(clock_span(11, 1), 2);
  EXPECT_DOUBLE_EQ(clock_span(5, 2), 9);
  EXPECT_DOUBLE_EQ(clock_span(4, 4), 12);
  EXPECT_DOUBLE_EQ(clock_span(12, 12), 12);
}

}  // namespace
}  // namespace drapewright::geometry
