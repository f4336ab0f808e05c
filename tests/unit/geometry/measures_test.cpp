#include "core/geometry/measures.h"

#include <gtest/gtest.h>

#include <random>

#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

std::vector<Point> scattered(std::mt19937& random, int count, double step) {
  std::uniform_int_distribution<int> grid(-20, 20);
  std::vector<Point> points;
  for (int i = 0; i < count; ++i) points.push_back({step * grid(random), step * grid(random)});
  return points;
}

double greatest_length_by_trying(const std::vector<Point>& points) {
  double longest = 0;
  for (const Point& a : points) {
    for (const Point& b : points) longest = std::max(longest, distance(a, b));
  }
  return longest;
}

// Ellipse rows calculated from pi/4 L W and the complete elliptic integral.
TEST(Measures, EllipsesHaveTheirPublishedAreaAndEdge) {
  const Ring big = ellipse(10, 6, {}, 0, 3600);
  EXPECT_NEAR(area(big), 47.1239, 5e-5);
  EXPECT_NEAR(edge_length(big), 25.52700, 1e-4);
  EXPECT_NEAR(edge_length(ellipse(8, 5, {}, 0, 3600)), 20.69314, 1e-4);
  EXPECT_NEAR(edge_length(ellipse(4, 2, {}, 0, 3600)), 9.68845, 1e-4);
}

TEST(Measures, HolesLessenTheAreaAndLengthenTheEdge) {
  const Region region{{rectangle(6, 4), {rectangle(2, 1)}}, {rectangle(1, 1, {9, 9}), {}}};
  EXPECT_DOUBLE_EQ(area(region), 23);
  EXPECT_DOUBLE_EQ(edge_length(region), 20 + 6 + 4);
}

TEST(Measures, OrientationDoesNotMatter) {
  Ring clockwise = rectangle(6, 4, {2, 3});
  std::reverse(clockwise.begin(), clockwise.end());
  EXPECT_DOUBLE_EQ(signed_area(clockwise), -24);
  EXPECT_DOUBLE_EQ(area(clockwise), 24);
  EXPECT_NEAR(centroid(clockwise).x, 2, 1e-12);
  EXPECT_NEAR(centroid(clockwise).y, 3, 1e-12);
}

TEST(Measures, NoPointsMeasureNothing) {
  EXPECT_EQ(area(Ring{}), 0);
  EXPECT_EQ(edge_length(Region{}), 0);
  EXPECT_EQ(centroid(Region{}), Point{});
  EXPECT_EQ(greatest_length({}), Segment{});
  EXPECT_TRUE(convex_hull({}).empty());
}

TEST(Measures, FarFromTheOriginNoDigitsAreLost) {
  const Ring ring = moved(ellipse(8, 5), {1e6, -1e6});
  EXPECT_NEAR(area(ring), pi * 10, 1e-7);
  EXPECT_NEAR(centroid(ring).x, 1e6, 1e-7);
}

TEST(Measures, CentroidWeighsByArea) {
  const Region region{{rectangle(2, 2, {0, 0}), {}}, {rectangle(2, 1, {6, 0}), {}}};
  EXPECT_NEAR(centroid(region).x, 2, 1e-12);
  const Region with_hole{{rectangle(4, 4), {rectangle(1, 1, {1, 0})}}};
  EXPECT_NEAR(centroid(with_hole).x, -1.0 / 15, 1e-12);
  EXPECT_EQ(centroid(Ring{{0, 0}, {2, 0}, {4, 0}}), (Point{2, 0}));  // no area
}

TEST(Measures, HullIsConvexHoldsAllAndHasNoThreeInLine) {
  std::mt19937 random(4);
  for (int round = 0; round < 200; ++round) {
    const auto points = scattered(random, 3 + round % 40, 0.5);
    const Ring hull = convex_hull(points);
    const std::size_t n = hull.size();
    for (std::size_t i = 0; n >= 3 && i < n; ++i) {
      const Point a = hull[i];
      const Point b = hull[(i + 1) % n];
      EXPECT_GT(cross(b - a, hull[(i + 2) % n] - b), 0);
      for (const Point& p : points) EXPECT_GE(cross(b - a, p - a), 0);
    }
  }
}

TEST(Measures, GreatestLengthIsTheLongestOfAllPairs) {
  std::mt19937 random(7);
  for (int round = 0; round < 500; ++round) {
    // A coarse grid gives ties, duplicates, parallel hull edges and collinear runs.
    const auto points = scattered(random, 1 + round % 50, round % 2 == 0 ? 0.1 : 1.0 / 3);
    const Segment longest = greatest_length(points);
    EXPECT_NEAR(distance(longest.from, longest.to), greatest_length_by_trying(points), 1e-12);
  }
}

TEST(Measures, GreatestLengthOfARegularShapeWithTies) {
  const Ring many = circle(10, {}, 360);
  const Segment longest = greatest_length(many);
  EXPECT_NEAR(distance(longest.from, longest.to), greatest_length_by_trying(many), 1e-12);
  EXPECT_EQ(greatest_length(many), greatest_length(many));
}

// On a coarse grid several pairs are often equally far apart, with different extents across.
TEST(Measures, ExtentAcrossTheGreatestLengthTurnsWithTheShape) {
  std::mt19937 random(11);
  const auto across = [](const std::vector<Point>& points) {
    const Segment longest = greatest_length(points);
    const Point along = longest.to - longest.from;
    return extent_along(points, degrees(std::atan2(along.y, along.x)) + 90);
  };
  for (int round = 0; round < 500; ++round) {
    const auto points = scattered(random, 3 + round % 20, 1.0 / 3);
    std::vector<Point> turned;
    const double angle = radians(10 + round);
    const Point x{std::cos(angle), std::sin(angle)}, y{-x.y, x.x};
    for (const Point p : points) turned.push_back(Point{7, -3} + p.x * x + p.y * y);
    EXPECT_NEAR(across(turned), across(points), 1e-9) << round;
  }
}

TEST(Measures, ExtentsAlongADirection) {
  const Ring ring = rectangle(6, 4, {50, 50}, 30);
  EXPECT_NEAR(extent_along(ring, 30), 6, 1e-12);
  EXPECT_NEAR(extent_along(ring, 300), 4, 1e-12);
  const Segment ends = extremes_along(ring, 30);
  EXPECT_NEAR(dot(ends.to - ends.from, {std::cos(radians(30)), std::sin(radians(30))}), 6, 1e-12);
}

TEST(Measures, DirectionsLieInOneTurn) {
  EXPECT_DOUBLE_EQ(direction_deg({}, {1, 1}), 45);
  EXPECT_DOUBLE_EQ(direction_deg({}, {0, -1}), 270);
  EXPECT_LT(direction_deg({}, {1, -1e-30}), 360);
}

TEST(Measures, BoundingBox) {
  const Box box = bounding_box(std::vector<Point>{{3, 1}, {-2, 5}, {0, 0}});
  EXPECT_EQ(box.low, (Point{-2, 0}));
  EXPECT_DOUBLE_EQ(box.width(), 5);
  EXPECT_DOUBLE_EQ(box.height(), 5);
}

}  // namespace
}  // namespace drapewright::geometry
