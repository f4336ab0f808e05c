// Freehand lines, smoothed and thinned: how far they stray, and how many points are left.
#include "core/tracing/trace.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/tracing/edge_place.h"

namespace drapewright::tracing {
namespace {

using geometry::Point;
using geometry::Ring;

/// A circle of 8 cm drawn by an unsteady hand.
Ring drawn_circle(double tremor_cm) {
  std::mt19937 random(7);
  std::normal_distribution<double> tremor(0, tremor_cm);
  Ring ring = geometry::circle(8, {}, 900);
  for (Point& p : ring) p = {p.x + tremor(random), p.y + tremor(random)};
  return ring;
}

double farthest(const Ring& points, const Ring& from) {
  double most = 0;
  for (const Point& p : points) most = std::max(most, nearest_on_edge(from, p).distance_cm);
  return most;
}

TEST(Smoothed, StaysWithinTheToleranceBothWays) {
  for (const double tremor : {0.0, 0.004, 0.02}) {
    const Ring drawn = drawn_circle(tremor);
    const Ring smooth = smoothed(drawn, Ends::joined);
    EXPECT_LE(farthest(smooth, drawn), trace_tolerance_cm + 1e-9) << tremor;
    EXPECT_LE(farthest(drawn, smooth), trace_tolerance_cm + 1e-9) << tremor;
  }
}

TEST(Smoothed, TakesTremorAndPointsAway) {
  const Ring drawn = drawn_circle(0.004);
  const Ring smooth = smoothed(drawn, Ends::joined);
  EXPECT_LT(smooth.size(), drawn.size() / 8);
  EXPECT_LT(geometry::edge_length(smooth), geometry::edge_length(drawn));
  EXPECT_NEAR(geometry::edge_length(smooth), 8 * geometry::pi, 0.1);
  EXPECT_NEAR(geometry::area(smooth), 16 * geometry::pi, 0.15);
}

TEST(Smoothed, KeepsOpenEndsAndCorners) {
  const Ring drawn{{0, 0}, {0, 0}, {1, 0.001}, {2, 0}, {3, 0}, {3, 1}, {3, 2}};
  const Ring smooth = smoothed(drawn, Ends::open);
  EXPECT_EQ(smooth.front(), drawn.front());
  EXPECT_EQ(smooth.back(), drawn.back());
  double nearest = 1;
  for (const Point& p : smooth) nearest = std::min(nearest, geometry::distance(p, {3, 0}));
  EXPECT_LE(nearest, trace_tolerance_cm);
}

TEST(Smoothed, LeavesNothingOfAClick) {
  EXPECT_LT(smoothed({{1, 1}, {1, 1}, {1.001, 1}, {1, 1.001}}, Ends::joined).size(), 3U);
  EXPECT_TRUE(smoothed({}, Ends::joined).empty());
}

}  // namespace
}  // namespace drapewright::tracing
