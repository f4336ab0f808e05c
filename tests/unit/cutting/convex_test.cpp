#include "core/cutting/convex.h"

#include <gtest/gtest.h>

#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

void expect_convex(const Convex& part) {
  const std::size_t n = part.corners.size();
  ASSERT_GE(n, 3u);
  ASSERT_EQ(part.normals.size(), n);
  for (std::size_t k = 0; k < n; ++k) {
    const Point edge = part.corners[(k + 1) % n] - part.corners[k];
    const Point next = part.corners[(k + 2) % n] - part.corners[(k + 1) % n];
    EXPECT_GT(geometry::cross(edge, next), 0);
    EXPECT_NEAR(geometry::norm(part.normals[k]), 1, 1e-12);
    EXPECT_NEAR(geometry::dot(part.normals[k], edge), 0, 1e-9);
    EXPECT_LT(geometry::cross(edge, part.normals[k]), 0) << "it points outwards";
  }
}

/// Parts that are convex, lie in the polygon and add up to its area cover it without overlap.
void expect_parts(const geometry::Polygon& polygon, std::size_t most) {
  const auto parts = convex_parts(polygon);
  double sum = 0;
  for (const auto& part : parts) {
    expect_convex(part);
    sum += geometry::area(part.corners);
  }
  EXPECT_NEAR(sum, geometry::area(polygon), 1e-9 * geometry::area(polygon));
  EXPECT_LE(parts.size(), most);
}

TEST(ConvexParts, OfAConvexPieceIsOne) {
  expect_parts(box(4, 3), 1);
  expect_parts({geometry::ellipse(8, 5), {}}, 1);
}
TEST(ConvexParts, OfAnEllAreTwo) { expect_parts(ell(5, 1), 2); }
TEST(ConvexParts, OfAStarAreFew) { expect_parts(star(5, 2), 5); }
TEST(ConvexParts, GoRoundAHole) { expect_parts(frame(6, 2), 6); }
TEST(ConvexParts, GoRoundSeveralHoles) {
  geometry::Polygon two = box(12, 6);
  for (const double x : {1.0, 7.0}) {
    two.holes.push_back({{x, 2}, {x, 4}, {x + 3, 4}, {x + 3, 2}});
  }
  expect_parts(two, 10);
}
TEST(ConvexParts, StandCollinearCorners) {
  expect_parts({{{0, 0}, {2, 0}, {4, 0}, {4, 3}, {2, 3}, {0, 3}}, {}}, 1);
}

}  // namespace
}  // namespace drapewright::cutting
