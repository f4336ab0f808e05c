#include "core/geometry/rectangle.h"

#include <gtest/gtest.h>

#include <random>
#include <stdexcept>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

void expect_holds(const Rectangle& rectangle, std::span<const Point> points, double slack_cm) {
  const Ring corner = corners(rectangle);
  for (std::size_t i = 0; i < 4; ++i) {
    const Point edge = corner[(i + 1) % 4] - corner[i];
    for (const Point& p : points) EXPECT_GE(cross(edge, p - corner[i]) / norm(edge), -slack_cm);
  }
}

double smallest_by_trying(const Ring& hull) {
  double least = 1e300;
  for (std::size_t i = 0; i < hull.size(); ++i) {
    const double angle = direction_deg(hull[i], hull[(i + 1) % hull.size()]);
    least = std::min(least, extent_along(hull, angle) * extent_along(hull, angle + 90));
  }
  return least;
}

std::vector<Point> scattered(std::mt19937& random, int count) {
  std::normal_distribution<double> at(0, 1);
  std::vector<Point> points;
  for (int i = 0; i < count; ++i) points.push_back({3 * at(random), at(random)});
  return points;
}

TEST(SmallestRectangle, OfARectangleIsItself) {
  for (double angle = 0; angle < 180; angle += 12.7) {
    const Rectangle found = smallest_enclosing_rectangle(rectangle(6, 4, {50, -30}, angle));
    EXPECT_NEAR(found.length_cm, 6, 1e-9);
    EXPECT_NEAR(found.width_cm, 4, 1e-9);
    EXPECT_NEAR(std::remainder(found.angle_deg - angle, 180), 0, 1e-9);
    EXPECT_NEAR(found.centre.x, 50, 1e-9);
    EXPECT_NEAR(found.centre.y, -30, 1e-9);
  }
}

TEST(SmallestRectangle, IsTheLeastOfAllHullEdges) {
  std::mt19937 random(21);
  for (int round = 0; round < 300; ++round) {
    const auto points = scattered(random, 3 + round % 60);
    const Rectangle found = smallest_enclosing_rectangle(points);
    const double least = smallest_by_trying(convex_hull(points));
    EXPECT_NEAR(found.length_cm * found.width_cm, least, 1e-9 * least);
    EXPECT_GE(found.length_cm, found.width_cm);
    EXPECT_GE(found.angle_deg, 0);
    EXPECT_LT(found.angle_deg, 180);
    expect_holds(found, points, 1e-9);
  }
}

TEST(SmallestRectangle, OfOneAndTwoPoints) {
  EXPECT_EQ(smallest_enclosing_rectangle(std::vector<Point>{{3, 4}}).length_cm, 0);
  const Rectangle line = smallest_enclosing_rectangle(std::vector<Point>{{0, 0}, {3, 3}, {1, 1}});
  EXPECT_NEAR(line.length_cm, 3 * std::sqrt(2), 1e-12);
  EXPECT_NEAR(line.angle_deg, 45, 1e-12);
  EXPECT_EQ(line.width_cm, 0);
}

TEST(PlaceInRectangle, WhatFitsExactlyFits) {
  std::mt19937 random(22);
  std::uniform_real_distribution<double> any(0, 180);
  for (int round = 0; round < 500; ++round) {
    const double angle = any(random);
    const Ring ring = rectangle(15, 12.5, {any(random), -any(random)}, angle);
    const auto along = place_in_rectangle(ring, 15, 12.5, tolerance::sheet_fit_cm);
    const auto swapped = place_in_rectangle(ring, 12.5, 15, tolerance::sheet_fit_cm);
    ASSERT_TRUE(along && swapped) << angle;
    EXPECT_NEAR(std::remainder(along->angle_deg - angle, 180), 0, 1e-6);
    EXPECT_NEAR(std::abs(std::remainder(swapped->angle_deg - angle, 180)), 90, 1e-6);
    expect_holds(*along, ring, 2 * tolerance::sheet_fit_cm);
    expect_holds(*swapped, ring, 2 * tolerance::sheet_fit_cm);
    EXPECT_FALSE(place_in_rectangle(ring, 15 - 1e-6, 12.5, tolerance::sheet_fit_cm));
    EXPECT_FALSE(place_in_rectangle(ring, 15, 12.5 - 1e-6, tolerance::sheet_fit_cm));
  }
}

// A long thin piece in a square: only near the diagonal, strictly between edge directions. A strip
// of length l and width w fits into a square of side a when (l + w) / sqrt 2 <= a.
TEST(PlaceInRectangle, FindsTheDiagonal) {
  const Ring strip = rectangle(14, 0.14, {3, 3}, 10);
  const double side = 14.14 / std::sqrt(2);
  const auto found = place_in_rectangle(strip, side, side, tolerance::sheet_fit_cm);
  ASSERT_TRUE(found);
  EXPECT_NEAR(std::remainder(found->angle_deg - 10, 90), 45, 1e-3);
  EXPECT_FALSE(place_in_rectangle(strip, side - 1e-6, side - 1e-6, tolerance::sheet_fit_cm));
}

TEST(PlaceInRectangle, AgreesWithTryingManyAngles) {
  std::mt19937 random(23);
  std::uniform_real_distribution<double> stretch(0.8, 1.4);
  int fits = 0;
  for (int round = 0; round < 300; ++round) {
    const auto points = scattered(random, 3 + round % 20);
    const Rectangle least = smallest_enclosing_rectangle(points);
    const double length = least.length_cm * stretch(random);
    const double width = least.width_cm * stretch(random);
    double spare = -1e300;
    for (double angle = 0; angle < 180; angle += 0.25) {
      spare = std::max(spare, std::min(length - extent_along(points, angle),
                                       width - extent_along(points, angle + 90)));
    }
    const auto found = place_in_rectangle(points, length, width, 0);
    EXPECT_TRUE(found || spare < 0) << round;
    EXPECT_TRUE(!found || spare >= -0.1) << round;  // coarser than the angles tried
    if (!found) continue;
    ++fits;
    expect_holds(*found, points, 1e-9);
    const double margin = std::min(length - extent_along(points, found->angle_deg),
                                   width - extent_along(points, found->angle_deg + 90));
    EXPECT_GE(margin, spare - 1e-9) << "the most even margin";
  }
  EXPECT_GT(fits, 50);
  EXPECT_LT(fits, 250);
}

// Sheets that just hold the 8 x 5 ellipse grown by 4 and 5 cm: 16 x 13 and 18 x 15 (calculated).
TEST(PlaceInRectangle, FilmForTheEllipse) {
  for (const double border : {4.0, 5.0}) {
    Ring grown;
    for (int i = 0; i < 720; ++i) {
      const double t = pi * i / 360;
      const Point normal{5 * std::cos(t), 8 * std::sin(t)};
      grown.push_back(Point{4 * std::cos(t), 2.5 * std::sin(t)} + (border / norm(normal)) * normal);
    }
    grown = turned(grown, 33);
    const double length = 8 + 2 * border;
    const double width = 5 + 2 * border;
    EXPECT_TRUE(place_in_rectangle(grown, length, width, tolerance::sheet_fit_cm));
    EXPECT_TRUE(place_in_rectangle(grown, width, length, tolerance::sheet_fit_cm));
    EXPECT_FALSE(place_in_rectangle(grown, length, width - 0.01, tolerance::sheet_fit_cm));
  }
}

TEST(PlaceInRectangle, SinglePointsAndLines) {
  EXPECT_TRUE(place_in_rectangle(std::vector<Point>{{3, 4}}, 1, 1, 0));
  const std::vector<Point> line{{0, 0}, {3, 4}};
  EXPECT_TRUE(place_in_rectangle(line, 4, 3, tolerance::sheet_fit_cm));
  EXPECT_FALSE(place_in_rectangle(line, 4, 2.9, tolerance::sheet_fit_cm));
}

TEST(PlaceInRectangle, SidesMustBePositiveAndSlackNotNegative) {
  const Ring ring = rectangle(1, 1);
  EXPECT_THROW(place_in_rectangle(ring, 0, 1, 0), std::invalid_argument);
  EXPECT_THROW(place_in_rectangle(ring, 1, -1, 0), std::invalid_argument);
  EXPECT_THROW(place_in_rectangle(ring, 1, 1, -1), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::geometry
