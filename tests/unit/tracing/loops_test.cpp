// Lines that cross themselves: where, and what loops they fall into.
#include "core/tracing/loops.h"

#include <gtest/gtest.h>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::tracing {
namespace {

using geometry::Ring;

const Ring eight{{0, 0}, {4, 4}, {4, 0}, {0, 4}};  // crosses itself at (2, 2)

TEST(FirstCrossing, IsFoundInAFigureOfEightAndNotInAnEllipse) {
  const auto where = first_crossing(eight, true);
  ASSERT_TRUE(where);
  EXPECT_NEAR(where->x, 2, 1e-9);
  EXPECT_NEAR(where->y, 2, 1e-9);
  EXPECT_FALSE(first_crossing(geometry::ellipse(8, 5), true));
}

TEST(FirstCrossing, OfAnOpenLineLeavesOutTheClosingEdge) {
  const Ring line{{0, 0}, {4, 0}, {4, 4}, {2, -2}};  // crosses the first edge
  EXPECT_TRUE(first_crossing(line, false));
  const Ring open{{0, 0}, {4, 0}, {4, 4}, {3, 1}};
  EXPECT_FALSE(first_crossing(open, false));
  EXPECT_FALSE(first_crossing({}, false));
  EXPECT_FALSE(first_crossing({{0, 0}}, true));
}

TEST(Loops, OfAFigureOfEightAreItsTwoHalves) {
  const auto loops = loops_at_crossings(eight);
  ASSERT_EQ(loops.size(), 2U);
  EXPECT_NEAR(geometry::area(loops[0]), 4, 1e-9);
  EXPECT_NEAR(geometry::area(loops[1]), 4, 1e-9);
}

TEST(Loops, PutTheLargestFirstAndCrossNothing) {
  // A square whose end overshoots its start into a small loop outside.
  const Ring ring{{0, 0}, {10, 0}, {10, 10}, {0, 10}, {0, -1}, {-1, -1}, {-1, -0.5}, {1, -0.5}};
  const auto loops = loops_at_crossings(ring);
  ASSERT_GE(loops.size(), 2U);
  EXPECT_NEAR(geometry::area(loops[0]), 100, 1);
  for (const Ring& loop : loops) EXPECT_FALSE(first_crossing(loop, true));
  EXPECT_GT(geometry::area(loops[0]), geometry::area(loops[1]));
}

TEST(Loops, OfASimpleRingAreTheRing) {
  const Ring ring = geometry::ellipse(8, 5);
  const auto loops = loops_at_crossings(ring);
  ASSERT_EQ(loops.size(), 1U);
  EXPECT_EQ(loops[0], ring);
}

TEST(Overshoot, IsCutOffWhereTheLineCrossesItselfNearItsEnds) {
  const Ring line{{0, -0.5}, {0, 4}, {4, 4}, {4, 0}, {-0.5, 0}};
  const Ring ring = without_overshoot(line);
  EXPECT_NEAR(geometry::area(ring), 16, 1e-9);
  EXPECT_FALSE(first_crossing(ring, true));
}

TEST(Overshoot, IsCutOffWhereTheLineRunsOnBesideItsStart) {
  Ring line;
  for (int deg = 0; deg <= 380; deg += 5) {
    const double reach = deg <= 180 ? 4 : 3.9;
    line.push_back(geometry::turned({reach, 0}, deg));
  }
  EXPECT_EQ(without_overshoot(line).size(), line.size() - 4);
}

TEST(Overshoot, LeavesAFigureOfEightAndAnEvenLineAlone) {
  EXPECT_EQ(without_overshoot(eight), eight);
  const Ring ring = geometry::ellipse(8, 5, {}, 0, 60);
  EXPECT_EQ(without_overshoot(ring), ring);
}

TEST(CrossingAtCorner, IsThatOfItsTwoEdgesAlone) {
  Ring ring = geometry::rectangle(6, 4);
  EXPECT_FALSE(crossing_at_corner(ring, 1));
  ring[1] = {-4, 0};
  EXPECT_TRUE(crossing_at_corner(ring, 1));
}

}  // namespace
}  // namespace drapewright::tracing
