// Outlines altered by drawing over them, held by their areas.
#include "core/tracing/reshape.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/geometry/validity.h"
#include "core/tracing/edge_place.h"

namespace drapewright::tracing {
namespace {

using geometry::Ring;

const Ring square = geometry::rectangle(10, 10);  // from -5 to 5

TEST(NearestOnEdge, IsTheFootOfThePerpendicular) {
  const auto place = nearest_on_edge(square, {6, 1});
  EXPECT_NEAR(place.at.x, 5, 1e-12);
  EXPECT_NEAR(place.at.y, 1, 1e-12);
  EXPECT_NEAR(place.distance_cm, 1, 1e-12);
}

TEST(StretchBetween, AndItsRestAreTheWholeEdge) {
  const auto a = nearest_on_edge(square, {5, 1}), b = nearest_on_edge(square, {-2, 5});
  double length = 0;
  for (const Ring& chain : {stretch_between(square, a, b), stretch_between(square, b, a)}) {
    for (std::size_t i = 1; i < chain.size(); ++i) {
      length += geometry::distance(chain[i - 1], chain[i]);
    }
  }
  EXPECT_NEAR(length, 40, 1e-9);
}

TEST(Retraced, PutsTheLineInPlaceOfTheNearerStretch) {
  // A bulge of 2 x 4 cm drawn on the right side, upwards and downwards.
  Ring line{{5, -2}, {7, -2}, {7, 2}, {5, 2}};
  for (int way = 0; way < 2; ++way) {
    const auto result = retraced(square, line, 0.3);
    ASSERT_TRUE(result);
    EXPECT_NEAR(geometry::area(*result), 108, 1e-9);
    EXPECT_FALSE(geometry::find_fault(*result, 100));
    std::ranges::reverse(line);
  }
}

TEST(Retraced, CutsIntoTheWound) {
  const auto result = retraced(square, {{5.1, -2}, {3, -2}, {3, 2}, {4.9, 2}}, 0.3);
  ASSERT_TRUE(result);
  EXPECT_NEAR(geometry::area(*result), 92, 1e-9);
}

TEST(Retraced, RefusesALineThatDoesNotReachTheEdge) {
  EXPECT_FALSE(retraced(square, {{5, -2}, {7, 0}}, 0.3));
  EXPECT_FALSE(retraced(square, {{5, 0}, {6, 1}, {5, 0}}, 0.3));
  EXPECT_FALSE(retraced(square, {{5, 0}}, 0.3));
}

TEST(SmoothedStretch, TakesASpikeDownAndLeavesTheRest) {
  const auto with_spike = retraced(square, {{5, -0.3}, {6, 0}, {5, 0.3}}, 0.3);
  ASSERT_TRUE(with_spike);
  const auto smooth = smoothed_stretch(*with_spike, {{5, -1}, {5, 1}}, 0.3, 1);
  ASSERT_TRUE(smooth);
  double farthest = 0;
  for (const auto& p : *smooth) farthest = std::max(farthest, p.x);
  EXPECT_LT(farthest, 5.7);
  EXPECT_FALSE(geometry::find_fault(*smooth, 100));
  for (const auto& corner : square) {
    EXPECT_NE(std::ranges::find(*smooth, corner), smooth->end()) << "a corner elsewhere stays";
  }
}

TEST(Split, GivesTwoPartsOfTheWhole) {
  const auto parts = split(square, {{-6, 2}, {0, 2}, {1, 3}, {6, 3}});
  ASSERT_TRUE(parts);
  const double upper = 3 * 5 + 2.5 + 2 * 4;
  EXPECT_NEAR(geometry::area(parts->second), upper, 1e-9);
  EXPECT_NEAR(geometry::area(parts->first), 100 - upper, 1e-9);
  EXPECT_FALSE(geometry::find_fault(parts->first, 100));
  EXPECT_FALSE(geometry::find_fault(parts->second, 100));
}

TEST(Split, RefusesALineThatEndsInside) {
  EXPECT_FALSE(split(square, {{-6, 2}, {0, 2}}));
  EXPECT_FALSE(split(square, {{6, 6}, {7, 7}}));
}

}  // namespace
}  // namespace drapewright::tracing
