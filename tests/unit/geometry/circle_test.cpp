#include "core/geometry/circle.h"

#include <gtest/gtest.h>

#include <stdexcept>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

void expect_largest(const Region& region, double radius_cm) {
  const auto found = largest_inscribed_circle(region);
  ASSERT_TRUE(found);
  EXPECT_LE(found->radius_cm, radius_cm + 1e-9);
  EXPECT_GE(found->radius_cm, radius_cm - 1e-3);
  EXPECT_TRUE(contains(region, found->centre));
  EXPECT_NEAR(EdgeIndex(region).nearest(found->centre).distance_cm, found->radius_cm, 1e-12);
}

TEST(LargestCircle, ClosedForms) {
  expect_largest({{rectangle(6, 4, {30, -7}, 25), {}}}, 2);
  expect_largest({{{{0, 0}, {3, 0}, {0, 4}}, {}}}, 1);  // right triangle: (a + b - c) / 2
  expect_largest({{circle(6, {1, 1}, 360), {}}}, 3 * std::sqrt(pi / (180 * std::sin(pi / 180))));
  const double side = 3;  // equilateral triangle: side / (2 sqrt 3)
  expect_largest({{{{0, 0}, {side, 0}, {side / 2, side * std::sqrt(3) / 2}}, {}}},
                 side / (2 * std::sqrt(3)));
}

TEST(LargestCircle, KeepsOutOfHoles) {
  // Between a square of side 6 and a square island of side 2 in its middle the circle sits in a
  // corner: it touches two sides and the island's corner, r (1 + 1/sqrt 2) = 2 with the island's
  // corner at 2 from both sides.
  const double r = 2 / (1 + std::sqrt(0.5));
  expect_largest({{rectangle(6, 6), {rectangle(2, 2)}}}, r);
}

TEST(LargestCircle, OfSeveralPartsTheWidest) {
  expect_largest(
      {{rectangle(1, 9), {}}, {rectangle(3, 3, {20, 0}), {}}, {rectangle(2, 2, {9, 9}), {}}}, 1.5);
}

TEST(LargestCircle, NarrowAndEmpty) {
  expect_largest({{rectangle(90, 0.1), {}}}, 0.05);
  EXPECT_FALSE(largest_inscribed_circle({}));
  EXPECT_FALSE(largest_inscribed_circle({{{{0, 0}, {1, 0}, {2, 0}}, {}}}));
}

TEST(LargestCircle, ToleranceMustBePositive) {
  EXPECT_THROW(largest_inscribed_circle({}, 0), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::geometry
