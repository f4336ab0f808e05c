#include "core/geometry/overlay.h"

#include <gtest/gtest.h>

#include <limits>
#include <stdexcept>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

Region square(double side, Point centre = {}, double angle_deg = 0) {
  return {{rectangle(side, side, centre, angle_deg), {}}};
}

void expect_oriented(const Region& region) {
  for (const Polygon& polygon : region) {
    EXPECT_GT(signed_area(polygon.outer), 0);
    for (const Ring& hole : polygon.holes) EXPECT_LT(signed_area(hole), 0);
  }
}

TEST(Overlay, AreasAddUp) {
  for (const Point centre : {Point{}, Point{1234.5, -987.6}}) {
    const Region a{{ellipse(8, 5, centre), {}}};
    const Region b = square(4, centre + Point{3, 1}, 20);
    const double both = area(unite(a, b));
    const double shared = area(intersect(a, b));
    EXPECT_GT(shared, 1);
    EXPECT_NEAR(both + shared, area(a) + area(b), 1e-3);
    EXPECT_NEAR(area(subtract(a, b)) + shared, area(a), 1e-3);
    EXPECT_NEAR(area(subtract(b, a)) + shared, area(b), 1e-3);
    expect_oriented(unite(a, b));
  }
}

TEST(Overlay, HolesAreMadeKeptAndFilled) {
  const Region ring = subtract(square(6), square(2));
  ASSERT_EQ(ring.size(), 1u);
  ASSERT_EQ(ring[0].holes.size(), 1u);
  EXPECT_NEAR(area(ring), 32, 1e-9);
  expect_oriented(ring);
  EXPECT_NEAR(area(unite(ring, square(1))), 33, 1e-9);
  EXPECT_EQ(unite(ring, square(1)).size(), 2u);
  EXPECT_TRUE(intersect(ring, square(1)).empty());
  EXPECT_NEAR(area(unite(ring, square(2))), 36, 1e-9);
  EXPECT_TRUE(unite(ring, square(2))[0].holes.empty());
}

TEST(Overlay, TouchingShapesLeaveNoSlivers) {
  for (double angle = 0; angle < 90; angle += 7.3) {
    const Region a{{turned(rectangle(3, 2, {1.5, 0}), angle), {}}};
    const Region b{{turned(rectangle(3, 2, {-1.5, 0.3}), angle), {}}};
    EXPECT_TRUE(intersect(a, b).empty()) << angle;
    EXPECT_FALSE(overlap(a, b)) << angle;
    // Along a slanted edge the corners snap away from each other's lines by up to a grid spacing.
    EXPECT_NEAR(area(unite(a, b)), 12, 1e-4) << angle;
    for (const Polygon& part : unite(a, b)) EXPECT_TRUE(part.holes.empty()) << angle;
    EXPECT_TRUE(subtract(a, a).empty()) << angle;
    EXPECT_NEAR(area(subtract(a, b)), 6, 1e-4) << angle;
  }
}

TEST(Overlay, ShapesThatTouchAtACornerStaySimple) {
  const Region both = unite(square(2, {0, 0}), square(2, {2, 2}));
  EXPECT_EQ(both.size(), 2u);
  EXPECT_NEAR(area(both), 8, 1e-9);
  // Four squares round an empty one: its corners touch the outside.
  const Region four[] = {square(2, {2, 0}), square(2, {-2, 0}), square(2, {0, 2}),
                         square(2, {0, -2})};
  EXPECT_NEAR(area(unite(four)), 16, 1e-9);
  EXPECT_FALSE(contains(unite(four), {0, 0}));
  expect_oriented(unite(four));
}

TEST(Overlay, KeepsPointsThatLieOnTheGrid) {
  const Region a = square(2, {100.12345, 7});
  const Region once = unite(a, {});
  EXPECT_EQ(once, unite(once, {}));
}

TEST(Overlay, NothingIsFine) {
  EXPECT_TRUE(unite(Region{}, Region{}).empty());
  EXPECT_TRUE(unite(std::span<const Region>{}).empty());
  EXPECT_TRUE(intersect(square(1), {}).empty());
  EXPECT_TRUE(subtract({}, square(1)).empty());
  EXPECT_NEAR(area(subtract(square(1), {})), 1, 1e-9);
}

TEST(Overlay, ManyShapesAtOnce) {
  std::vector<Region> row;
  for (int i = 0; i < 40; ++i) row.push_back(square(1, {0.5 * i, 0}));
  const Region united = unite(row);
  ASSERT_EQ(united.size(), 1u);
  EXPECT_NEAR(area(united), 20.5, 1e-9);
  EXPECT_EQ(united[0].outer.size(), 4u);
}

TEST(Overlay, WhatHasNoPlaceOnTheGridIsRefused) {
  EXPECT_THROW(unite(square(1), square(1, {1e6, 0})), std::invalid_argument);
  EXPECT_THROW(unite({{{{0, 0}, {1, 0}, {0, std::numeric_limits<double>::quiet_NaN()}}, {}}}, {}),
               std::invalid_argument);
}

TEST(Overlay, OverlapCountsFromAnAreaOn) {
  EXPECT_TRUE(overlap(square(2), square(2, {1, 1})));
  EXPECT_FALSE(overlap(square(2), square(2, {1, 1}), 1.01));
  EXPECT_FALSE(overlap(square(2), square(2, {5, 5})));
}

}  // namespace
}  // namespace drapewright::geometry
