#include "core/geometry/band.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"

namespace drapewright::geometry {
namespace {

constexpr double error_cm = 0.004;

double distance_to_line(const std::vector<Point>& line, Point p) {
  double least = distance(line.front(), p);
  for (std::size_t i = 1; i < line.size(); ++i) {
    least = std::min(least, distance(nearest_on({line[i - 1], line[i]}, p), p));
  }
  return least;
}

/// Distances of the edge's corners and of the middles of its chords from the line.
std::pair<double, double> least_and_most(const Region& region, const std::vector<Point>& line) {
  double least = 1e9, most = 0;
  const Ring& ring = region.front().outer;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    for (const Point p : {ring[i], 0.5 * (ring[i] + ring[(i + 1) % ring.size()])}) {
      least = std::min(least, distance_to_line(line, p));
      most = std::max(most, distance_to_line(line, p));
    }
  }
  return {least, most};
}

TEST(Band, LiesOnTheSideThatIsAskedForWithinItsError) {
  constexpr double rounding = 2e-5;  // of an overlay, where there are several steps
  const std::vector<std::vector<Point>> lines{
      {{1, 2}}, {{1, 2}, {1, 2}}, {{0, 0}, {3, 1}}, {{0, 0}, {3, 1}, {3, 5}, {-2, 6}}};
  for (const auto& line : lines) {
    for (const double reach : {0.5, 1.5, 6.5}) {
      const Region outside = band(line, reach, Chords::outside, error_cm);
      ASSERT_EQ(outside.size(), 1u);
      const auto [least, most] = least_and_most(outside, line);
      EXPECT_GE(least, reach - rounding);
      EXPECT_LE(most, reach + error_cm + rounding);
      const Region inside = band(line, reach, Chords::inside, error_cm);
      const auto [low, high] = least_and_most(inside, line);
      EXPECT_GE(low, reach - error_cm - rounding);
      EXPECT_LE(high, reach + rounding);
      EXPECT_GT(signed_area(inside.front().outer), 0);
    }
  }
}

// A rectangle and two half circles.
TEST(Band, HasTheAreaOfAStadium) {
  const double exact = 4 * 3 + pi * 1.5 * 1.5;
  const std::vector<Point> line{{0, 0}, {0, 4}};
  EXPECT_NEAR(area(band(line, 1.5, Chords::inside, 1e-5)), exact, 1e-3);
  EXPECT_NEAR(area(band(line, 1.5, Chords::outside, 1e-5)), exact, 1e-3);
}

TEST(Band, RefusesWhatIsNoBand) {
  EXPECT_THROW(band({}, 1, Chords::inside, error_cm), std::invalid_argument);
  EXPECT_THROW(band({{0, 0}}, 0, Chords::inside, error_cm), std::invalid_argument);
  EXPECT_THROW(band({{0, 0}}, 1, Chords::inside, std::nan("")), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::geometry
