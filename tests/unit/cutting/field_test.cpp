#include "core/cutting/field.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

/// A star among a frame, an ell and a box, with unequal weights.
class AmongOthers : public testing::Test {
 protected:
  AmongOthers() {
    orient(make_stand_in(star(2, 0.9)), 10, moving_);
    add(frame(6, 4.5), 20, {4, 4}, 1);
    add(ell(6, 1), 75, {11, 6}, 2.5);
    add(box(5, 2), 33, {9, 2}, 1.7);
    field_.reset({{2, 2}, {14, 8}});
    for (const auto& other : others_) field_.add(other.no_fit, other.at, other.weight);
  }
  struct Other {
    NoFit no_fit;
    Point at;
    double weight;
  };
  void add(const geometry::Polygon& piece, double angle, Point at, double weight) {
    Oriented fixed;
    orient(make_stand_in(piece), angle, fixed);
    Other other{{}, at, weight};
    make_no_fit(fixed, moving_, 0.2, other.no_fit);
    others_.push_back(std::move(other));
  }
  double pressure(Point p) const { return field_.pressure(p, 1e300); }
  Oriented moving_;
  std::vector<Other> others_;
  Field field_;
  Random random_{1};
};

TEST_F(AmongOthers, TheBestOnALineIsFreeWheneverThatCanBe) {
  int free = 0;
  for (int round = 0; round < 200; ++round) {
    const bool x = round % 2 == 0;
    const Point p{random_.between(2, 14), random_.between(2, 8)};
    const auto best = field_.best_along(x ? Field::Axis::x : Field::Axis::y, p, 1e300, random_);
    EXPECT_NEAR(best.pressure, pressure(best.at), 1e-9);
    EXPECT_EQ(x ? best.at.y : best.at.x, x ? p.y : p.x);
    free += best.pressure == 0;
    for (int k = 0; k <= 500 && best.pressure > 0; ++k) {
      const Point q = x ? Point{2 + 12 * k / 500.0, p.y} : Point{p.x, 2 + 6 * k / 500.0};
      EXPECT_GT(pressure(q), 0);
    }
  }
  EXPECT_GT(free, 20);
  EXPECT_LT(free, 180);
}

TEST_F(AmongOthers, DescentEndsNoHigherThanTheLinesThroughItsStart) {
  for (int round = 0; round < 200; ++round) {
    const Point p{random_.between(2, 14), random_.between(2, 8)};
    const double x = field_.best_along(Field::Axis::x, p, 1e300, random_).pressure;
    const double y = field_.best_along(Field::Axis::y, p, 1e300, random_).pressure;
    const auto spot = field_.descend(p, random_);
    EXPECT_LE(spot.pressure, std::max(x, y));
    EXPECT_NEAR(spot.pressure, pressure(spot.at), 1e-9);
    EXPECT_TRUE(spot.at.x >= 2 && spot.at.x <= 14 && spot.at.y >= 2 && spot.at.y <= 8);
  }
}

TEST_F(AmongOthers, TouchingSpotsAreFreeAndTouchSomething) {
  std::vector<Point> spots;
  field_.touching_spots(spots);
  ASSERT_GT(spots.size(), 10u);
  for (const Point spot : spots) {
    EXPECT_EQ(pressure(spot), 0);
    int blocked = 0;
    for (int k = 0; k < 36; ++k) {
      const double angle = geometry::radians(10.0 * k);
      const Point q{spot.x + 1e-4 * std::cos(angle), spot.y + 1e-4 * std::sin(angle)};
      blocked += q.x < 2 || q.x > 14 || q.y < 2 || q.y > 8 || !field_.free(q);
    }
    EXPECT_GE(blocked, 5);
  }
}

TEST_F(AmongOthers, TheLowestFreePointIsATouchingSpot) {
  std::vector<Point> spots;
  field_.touching_spots(spots);
  const auto lowest =
      *std::min_element(spots.begin(), spots.end(), [](Point a, Point b) { return a.x < b.x; });
  for (double x = 2; x < lowest.x - 1e-3; x += 0.01) {
    for (double y = 2; y <= 8; y += 0.01) ASSERT_FALSE(field_.free({x, y})) << x << " " << y;
  }
}

TEST(Field, FindsASlotThatFitsExactly) {
  Oriented slider, block;
  orient(make_stand_in(box(2, 1)), 0, slider);
  orient(make_stand_in(box(3, 4)), 0, block);
  NoFit no_fit;
  make_no_fit(block, slider, 0, no_fit);
  Field field;
  field.reset({{1, 0.5}, {7, 3.5}});
  field.add(no_fit, {1.5, 2}, 1);  // from x 0 to 3
  field.add(no_fit, {6.5, 2}, 1);  // from x 5 to 8: a slot 2 wide
  Random random(1);
  const auto spot = field.best_along(Field::Axis::x, {2, 2}, 1e300, random);
  EXPECT_EQ(spot.pressure, 0);
  EXPECT_NEAR(spot.at.x, 4, 1e-9);
}

}  // namespace
}  // namespace drapewright::cutting
