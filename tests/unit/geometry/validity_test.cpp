#include "core/geometry/validity.h"

#include <gtest/gtest.h>

#include <limits>
#include <random>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

constexpr double max_cm = 100;

void expect_fault(const Ring& ring, const std::string& words, Point where, double within = 1e-4) {
  const auto fault = find_fault(ring, max_cm);
  ASSERT_TRUE(fault);
  EXPECT_NE(fault->problem.find(words), std::string::npos) << fault->problem;
  EXPECT_FALSE(fault->expected.empty());
  EXPECT_LE(distance(fault->where, where), within) << fault->where.x << ' ' << fault->where.y;
}

TEST(Validity, FewerThanThreeDistinctPoints) {
  expect_fault({}, "fewer than three", {});
  expect_fault({{5, 6}}, "fewer than three", {5, 6});
  expect_fault({{5, 6}, {7, 8}}, "fewer than three", {5, 6});
  expect_fault({{5, 6}, {7, 8}, {5, 6}, {7, 8}, {5, 6}}, "fewer than three", {5, 6});
}

TEST(Validity, NotFinite) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const double infinite = std::numeric_limits<double>::infinity();
  expect_fault({{0, 0}, {1, 0}, {nan, 1}}, "corner point 3", {1, 0});
  expect_fault({{infinite, 0}, {1, 0}, {0, 1}}, "corner point 1", {});
}

TEST(Validity, TooLarge) {
  expect_fault({{0, 0}, {100.5, 0}, {0, 1}}, "100.5", {100.5, 0}, 101);
  EXPECT_FALSE(find_fault(rectangle(99, 10, {1e4, 1e4}), max_cm));
}

TEST(Validity, CrossesItself) {
  expect_fault({{0, 0}, {4, 4}, {4, 0}, {0, 4}}, "crosses itself", {2, 2});
  // The same at a corner point of both, and where one passes through the other's corner.
  expect_fault({{0, 0}, {2, 2}, {4, 4}, {4, 0}, {2, 2}, {0, 4}}, "crosses itself", {2, 2});
  expect_fault({{0, 0}, {4, 4}, {4, 0}, {2, 2}, {0, 4}}, "crosses itself", {2, 2});
  // Round twice.
  expect_fault({{0, 0}, {4, 0}, {4, 4}, {1, 4}, {1, 1}, {3, 1}, {3, 3}, {0, 3}}, "crosses itself",
               {1, 3});
}

TEST(Validity, CrossesItselfInAThousandPoints) {
  Ring ring = circle(20, {}, 1000);
  std::swap(ring[300], ring[301]);
  expect_fault(ring, "crosses itself", ring[300], 0.1);
}

int winding_number(const Ring& ring, Point p) {
  int number = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const Point a = ring[i];
    const Point b = ring[(i + 1) % ring.size()];
    if ((a.y > p.y) == (b.y > p.y) || cross(b - a, p - a) * (b.y - a.y) <= 0) continue;
    number += b.y > a.y ? 1 : -1;
  }
  return number;
}

// Corner points on a coarse lattice meet in every way there is: at corners, along edges, as spikes,
// going on or turning back. What is right is told by winding numbers between the lattice's lines.
TEST(Validity, CrossingIsWhatWindingNumbersSay) {
  std::mt19937 random(31);
  std::uniform_int_distribution<int> lattice(0, 4);
  std::uniform_int_distribution<int> corners(3, 9);
  int fine = 0;
  int crossing = 0;
  for (int round = 0; round < 300; ++round) {
    Ring ring;
    for (int i = corners(random); i > 0; --i) {
      ring.push_back({double(lattice(random)), double(lattice(random))});
    }
    const auto fault = find_fault(turned(ring, round % 2 == 0 ? 0 : 20), max_cm);
    if (fault && fault->problem.find("crosses") == std::string::npos) continue;
    int least = 0;
    int most = 0;
    for (double x = 0.013; x < 4; x += 0.0171) {
      for (double y = 0.029; y < 4; y += 0.0133) {
        const int number = winding_number(ring, {x, y});
        least = std::min(least, number);
        most = std::max(most, number);
      }
    }
    EXPECT_EQ(fault.has_value(), most - least > 1) << round;
    ++(fault ? crossing : fine);
    if (!fault) {
      EXPECT_NEAR(area(tidy({ring, {}}).region), area(ring), 1e-3) << round;
    }
  }
  EXPECT_GT(fine, 30);
  EXPECT_GT(crossing, 30);
}

TEST(Validity, NoArea) {
  expect_fault({{0, 0}, {1, 1}, {2, 2}}, "no area", {0, 0});
  expect_fault({{0, 0}, {3, 0}, {1, 0}, {2, 0}}, "no area", {0, 0});
}

TEST(Validity, HarmlessThingsAreFine) {
  const Ring spiky{{0, 0}, {2, 0}, {2, -3}, {2, 0}, {4, 0}, {4, 4}, {4, 4}, {2, 4}, {0, 4}};
  const Ring touching{{0, 0}, {2, 2}, {4, 0}, {4, 4}, {2, 2}, {0, 4}};
  const Ring bridge{{0, 0}, {2, 0}, {2, 1}, {5, 1}, {5, 0}, {7, 0},
                    {7, 2}, {5, 2}, {5, 1}, {2, 1}, {2, 2}, {0, 2}};
  for (const Ring& ring : {spiky, touching, bridge}) {
    EXPECT_FALSE(find_fault(ring, max_cm));
    EXPECT_FALSE(find_fault(turned(ring, 33.3, {50, 2}), max_cm));
    EXPECT_FALSE(find_fault(Ring(ring.rbegin(), ring.rend()), max_cm));
  }
}

TEST(Islands, FaultlessOnes) {
  const Ring outline = rectangle(10, 10);
  EXPECT_FALSE(find_island_fault(outline, {}, max_cm));
  EXPECT_FALSE(find_island_fault(outline, {circle(2), circle(1, {3, 3})}, max_cm));
  // Touching the outline and each other.
  const Ring left = rectangle(2, 2, {-1, 0});
  const Ring right = rectangle(2, 2, {1, 0.5});
  EXPECT_FALSE(find_island_fault(outline, {left, right, rectangle(2, 2, {4, 4})}, max_cm));
}

TEST(Islands, Faults) {
  const Ring outline = rectangle(10, 10);
  const auto outside = find_island_fault(outline, {circle(1), circle(2, {8, 8})}, max_cm);
  ASSERT_TRUE(outside);
  EXPECT_NE(outside->problem.find("outside"), std::string::npos);
  EXPECT_NEAR(distance(outside->where, {8, 8}), 1, 1e-3);

  const auto crossing = find_island_fault(outline, {rectangle(2, 2, {5, 0})}, max_cm);
  ASSERT_TRUE(crossing);
  EXPECT_NE(crossing->problem.find("crosses"), std::string::npos);
  EXPECT_NEAR(crossing->where.x, 5, 1e-4);
  EXPECT_NEAR(std::abs(crossing->where.y), 1, 1e-4);

  const auto overlapping =
      find_island_fault(outline, {rectangle(2, 2), rectangle(2, 2, {1.5, 0})}, max_cm);
  ASSERT_TRUE(overlapping);
  EXPECT_NE(overlapping->problem.find("overlap"), std::string::npos);
  EXPECT_NEAR(std::abs(overlapping->where.y), 1, 1e-4);

  EXPECT_TRUE(find_island_fault(outline, {rectangle(4, 4), rectangle(1, 1)}, max_cm));
  EXPECT_TRUE(find_island_fault(rectangle(1, 1), {rectangle(4, 4)}, max_cm));
  EXPECT_TRUE(find_island_fault(outline, {{{0, 0}, {1, 0}}}, max_cm));
}

TEST(Tidy, LeavesASimpleShapeAsItIs) {
  const Polygon polygon{ellipse(8, 5, {3, 3}, 20), {}};
  const Tidied tidied = tidy(polygon);
  EXPECT_EQ(tidied.region, Region{polygon});
  EXPECT_EQ(tidied.spikes_removed, 0);
  EXPECT_FALSE(tidied.split);
}

TEST(Tidy, OrientsRings) {
  const Ring outer = rectangle(6, 4);
  const Tidied tidied = tidy({Ring(outer.rbegin(), outer.rend()), {circle(1)}});
  ASSERT_EQ(tidied.region.size(), 1u);
  EXPECT_GT(signed_area(tidied.region[0].outer), 0);
  EXPECT_LT(signed_area(tidied.region[0].holes[0]), 0);
}

TEST(Tidy, DropsRepeatedAndCollinearPoints) {
  const Tidied tidied =
      tidy({{{0, 0}, {1, 0}, {1, 0}, {2, 0}, {4, 0}, {4, 0}, {4, 4}, {0, 4}, {0, 2}, {0, 0}}, {}});
  ASSERT_EQ(tidied.region.size(), 1u);
  EXPECT_EQ(tidied.region[0].outer.size(), 4u);
  EXPECT_EQ(tidied.spikes_removed, 0);
}

TEST(Tidy, CutsSpikesOff) {
  const Tidied tidied = tidy({{{0, 0},
                               {2, 0},
                               {2, -1},
                               {2, -2},
                               {2, -3},
                               {2, -2},
                               {2, -1},
                               {2, 0},
                               {4, 0},
                               {4, 4},
                               {5, 5},
                               {4, 4},
                               {0, 4}},
                              {}});
  ASSERT_EQ(tidied.region.size(), 1u);
  EXPECT_EQ(tidied.region[0].outer.size(), 4u);
  EXPECT_NEAR(area(tidied.region), 16, 1e-9);
  EXPECT_EQ(tidied.spikes_removed, 2);
  EXPECT_EQ(tidied.where, (Point{2, -3}));
}

TEST(Tidy, SplitsWhereTheOutlineTouchesItself) {
  const Ring touching{{0, 0}, {2, 2}, {4, 0}, {4, 4}, {2, 2}, {0, 4}};
  const Tidied tidied = tidy({touching, {}});
  EXPECT_TRUE(tidied.split);
  EXPECT_EQ(tidied.region.size(), 2u);
  EXPECT_NEAR(area(tidied.region), area(touching), 1e-3);
  EXPECT_LE(distance(tidied.where, {2, 2}), 1e-4);
}

TEST(Tidy, ABridgeWithoutWidthParts) {
  const Ring bridge{{0, 0}, {2, 0}, {2, 1}, {5, 1}, {5, 0}, {7, 0},
                    {7, 2}, {5, 2}, {5, 1}, {2, 1}, {2, 2}, {0, 2}};
  const Tidied tidied = tidy({turned(bridge, 17), {}});
  EXPECT_TRUE(tidied.split);
  EXPECT_EQ(tidied.region.size(), 2u);
  EXPECT_NEAR(area(tidied.region), 8, 1e-3);
}

TEST(Tidy, IslandsThatTouchBecomeOneHole) {
  const Tidied tidied =
      tidy({rectangle(10, 10), {rectangle(2, 2, {-1, 0}), rectangle(2, 2, {1, 0.5})}});
  ASSERT_EQ(tidied.region.size(), 1u);
  EXPECT_EQ(tidied.region[0].holes.size(), 1u);
  EXPECT_NEAR(area(tidied.region), 92, 1e-3);
  const Tidied at_the_edge = tidy({rectangle(10, 10), {rectangle(2, 2, {4, 0})}});
  ASSERT_EQ(at_the_edge.region.size(), 1u);
  EXPECT_TRUE(at_the_edge.region[0].holes.empty());
  EXPECT_NEAR(area(at_the_edge.region), 96, 1e-3);
}

}  // namespace
}  // namespace drapewright::geometry
