#include "core/geometry/offset.h"

#include <gtest/gtest.h>

#include <limits>
#include <stdexcept>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

constexpr double error_cm = 0.005;

/// The offset keeps its distance at every corner and in the middle of every edge, and strays no
/// farther than the error.
void expect_at_distance(const Region& source, const Offset& offset, double distance_cm) {
  ASSERT_TRUE(offset.verified) << offset.doubt;
  const EdgeIndex edges(source);
  for (const Polygon& polygon : offset.region) {
    std::vector<Ring> rings = polygon.holes;
    rings.push_back(polygon.outer);
    for (const Ring& ring : rings) {
      for (std::size_t i = 0; i < ring.size(); ++i) {
        const Point next = ring[(i + 1) % ring.size()];
        for (const Point p : {ring[i], 0.5 * (ring[i] + next)}) {
          EXPECT_GE(edges.nearest(p).distance_cm, distance_cm);
          EXPECT_LE(edges.nearest(p).distance_cm, distance_cm + error_cm);
        }
      }
    }
  }
}

TEST(Inset, OfARectangleIsARectangle) {
  const Region wound{{rectangle(6, 4, {3, 2}, 30), {}}};
  for (const double d : {0.1, 0.3, 0.5, 1.9}) {
    const Offset filler = inset(wound, d);
    expect_at_distance(wound, filler, d);
    const double exact = (6 - 2 * d) * (4 - 2 * d);
    EXPECT_LE(area(filler.region), exact);
    EXPECT_GE(area(filler.region), exact - error_cm * 20);
  }
}

TEST(Inset, OfACircle) {
  const Region wound{{circle(6), {}}};
  const Offset filler = inset(wound, 0.3);
  expect_at_distance(wound, filler, 0.3);
  EXPECT_NEAR(area(filler.region), pi * 2.7 * 2.7, error_cm * 2 * pi * 2.7);
}

TEST(Inset, KeepsAwayFromIslandsToo) {
  const Region wound{{rectangle(8, 6), {circle(2)}}};
  const Offset filler = inset(wound, 0.5);
  expect_at_distance(wound, filler, 0.5);
  ASSERT_EQ(filler.region.size(), 1u);
  ASSERT_EQ(filler.region[0].holes.size(), 1u);
  EXPECT_NEAR(area(filler.region), 35 - pi * 1.5 * 1.5, error_cm * 34);
  EXPECT_LT(area(filler.region), 35 - pi * 1.5 * 1.5);
}

TEST(Inset, FallsApartAtANarrowArm) {
  const Region wound{{{{0, 0},
                       {3, 0},
                       {3, 1},
                       {6, 1},
                       {6, 0},
                       {9, 0},
                       {9, 3},
                       {6, 3},
                       {6, 1.5},
                       {3, 1.5},
                       {3, 3},
                       {0, 3}},
                      {}}};
  EXPECT_EQ(inset(wound, 0.2).region.size(), 1u);
  const Offset filler = inset(wound, 0.3);
  expect_at_distance(wound, filler, 0.3);
  EXPECT_EQ(filler.region.size(), 2u);
}

TEST(Inset, NothingIsLeftOfANarrowWound) {
  const Region wound{{ellipse(6, 0.55), {}}};
  const Offset filler = inset(wound, 0.3);
  EXPECT_TRUE(filler.verified) << filler.doubt;
  EXPECT_TRUE(filler.region.empty());
  const Offset thinner = inset(wound, 0.2);
  expect_at_distance(wound, thinner, 0.2);
  EXPECT_FALSE(thinner.region.empty());
}

TEST(Inset, OfSeveralPolygonsIsEachOnesOwn) {
  const Region touching{{rectangle(2, 2, {1, 1}), {}}, {rectangle(2, 2, {3, 3}), {}}};
  const Offset filler = inset(touching, 0.3);
  ASSERT_TRUE(filler.verified);
  EXPECT_EQ(filler.region.size(), 2u);
  EXPECT_NEAR(area(filler.region), 2 * 1.4 * 1.4, 0.06);
}

// Steiner's formula for convex shapes: A + P m + pi m2 (calculated rows for the 8 x 5 ellipse and
// the circle of 6 cm).
TEST(Outset, FollowsSteinersFormula) {
  const auto grown_area = [](const Ring& ring, double d) {
    const Region wound{{ring, {}}};
    const Offset film = outset(wound, d);
    expect_at_distance(wound, film, d);
    return area(film.region);
  };
  const Ring oval = ellipse(8, 5, {}, 0, 720);
  EXPECT_NEAR(grown_area(oval, 4), 164.454, error_cm * 46);
  EXPECT_NEAR(grown_area(oval, 5), 213.421, error_cm * 52);
  EXPECT_NEAR(grown_area(circle(6, {}, 720), 5), 201.062, error_cm * 51);
  const double exact = 24 + 20 * 5 + pi * 25;
  const double rectangle_grown = grown_area(rectangle(6, 4, {9, 9}, 12), 5);
  EXPECT_GE(rectangle_grown, exact);
  EXPECT_LE(rectangle_grown, exact + error_cm * 52);
}

TEST(Outset, JoinsWhatIsNearAndFillsIslands) {
  const Region wounds{{rectangle(2, 2), {}}, {rectangle(3, 3, {6, 0}), {circle(1, {6, 0})}}};
  const Offset near = outset(wounds, 2);
  expect_at_distance(wounds, near, 2);
  EXPECT_EQ(near.region.size(), 1u);
  const Offset apart = outset(wounds, 1);
  expect_at_distance(wounds, apart, 1);
  EXPECT_EQ(apart.region.size(), 2u);
  EXPECT_TRUE(apart.region[1].holes.empty() && apart.region[0].holes.empty());
}

TEST(Outset, LeavesTheMiddleOfAWideRingOpen) {
  const Region ring{{circle(20), {circle(14)}}};
  const Offset film = outset(ring, 2);
  expect_at_distance(ring, film, 2);
  ASSERT_EQ(film.region.size(), 1u);
  EXPECT_EQ(film.region[0].holes.size(), 1u);
}

TEST(Outset, AllDistancesFarFromTheOrigin) {
  const Region wound{{ellipse(8, 5, {5000, -7000}, 33), {}}};
  for (const double d : {0.0005, 0.01, 0.3, 5.0, 20.0}) {
    expect_at_distance(wound, outset(wound, d), d);
  }
}

TEST(Offset, AFinerErrorIsKept) {
  const Region wound{{ellipse(8, 5), {}}};
  const Offset fine = outset(wound, 3, 0.0005);
  ASSERT_TRUE(fine.verified) << fine.doubt;
  const EdgeIndex edges(wound);
  for (const Point& p : fine.region[0].outer) {
    EXPECT_GE(edges.nearest(p).distance_cm, 3);
    EXPECT_LE(edges.nearest(p).distance_cm, 3.0005);
  }
}

TEST(Offset, WhatCannotBeVerifiedHasADoubtAndNoShape) {
  // Not a shape that anyone should ask about: it crosses itself.
  const Region crossing{{{{0, 0}, {4, 4}, {4, 0}, {0, 4.5}}, {}}};
  for (const Offset& result : {inset(crossing, 0.3), outset(crossing, 2)}) {
    EXPECT_FALSE(result.verified);
    EXPECT_TRUE(result.region.empty());
    EXPECT_FALSE(result.doubt.empty());
    EXPECT_EQ(result.attempts, 8);
  }
}

TEST(Offset, AtNoDistanceIsTheShapeItself) {
  const Region wound{{ellipse(8, 5), {}}};
  EXPECT_EQ(inset(wound, 0).region, wound);
  EXPECT_EQ(outset(wound, 0).region, wound);
  EXPECT_TRUE(inset(Region{}, 1).verified);
  EXPECT_TRUE(outset(Region{}, 1).region.empty());
}

TEST(Offset, IsTheSameEveryTime) {
  const Region wound{{ellipse(8, 5, {1, 2}, 3), {}}};
  EXPECT_EQ(inset(wound, 0.3).region, inset(wound, 0.3).region);
}

TEST(Offset, ArgumentsOutsideTheirDomain) {
  const Region wound{{circle(3), {}}};
  EXPECT_THROW(inset(wound, -1), std::invalid_argument);
  EXPECT_THROW(outset(wound, std::numeric_limits<double>::quiet_NaN()), std::invalid_argument);
  EXPECT_THROW(outset(wound, 1, 0), std::invalid_argument);
  EXPECT_THROW(outset(wound, 1, 1e-12), std::invalid_argument);
  EXPECT_THROW(inset({{{{0, 0}, {1, 1}}, {}}}, 1), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::geometry
