#include "core/cutting/simplify.h"

#include <gtest/gtest.h>

#include "core/geometry/distance.h"
#include "core/geometry/overlay.h"
#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

/// A blob with lobes and small ripples, as a traced edge has them.
geometry::Polygon blob(int corners, double ripple) {
  geometry::Ring ring;
  for (int k = 0; k < corners; ++k) {
    const double a = 2 * geometry::pi * k / corners;
    const double r = 4 + 1.2 * std::sin(3 * a) + ripple * std::sin(41 * a);
    ring.push_back({r * std::cos(a), r * std::sin(a)});
  }
  return {ring, {}};
}

/// It covers the original and no point of it lies farther outside than `most`.
void expect_covers(const geometry::Polygon& original, double most, std::size_t corners) {
  const auto simple = simplify_outwards(original, most);
  EXPECT_LE(simple.outer.size(), corners);
  const auto missing = geometry::subtract({original}, {simple});
  EXPECT_LT(geometry::area(missing), 1e-4 * geometry::edge_length(original.outer));
  const geometry::EdgeIndex edge(geometry::Region{original});
  for (const auto& p : simple.outer) {
    if (geometry::contains(original, p)) continue;
    EXPECT_LE(edge.nearest(p).distance_cm, most + 1e-9);
  }
}

TEST(SimplifyOutwards, CoversATracedBlobWithFewCorners) {
  expect_covers(blob(200, 0), 0.05, 45);
  expect_covers(blob(200, 0.02), 0.08, 50);
  expect_covers(blob(500, 0.02), 0.08, 50);
}
TEST(SimplifyOutwards, CoversAnEllipse) {
  expect_covers({geometry::ellipse(8, 5, {}, 20, 360), {}}, 0.05, 26);
}
TEST(SimplifyOutwards, LeavesWhatIsSimple) {
  EXPECT_EQ(simplify_outwards(ell(5, 1), 0.1).outer.size(), 6u);
  EXPECT_EQ(simplify_outwards(frame(5, 1), 0.1).holes.size(), 1u);
}
TEST(SimplifyOutwards, KeepsAHoleInsideItsOldEdge) {
  geometry::Polygon plate = box(10, 8);
  auto hole = geometry::circle(4, {5, 4}, 90);
  std::reverse(hole.begin(), hole.end());
  plate.holes = {hole};
  const auto simple = simplify_outwards(plate, 0.05);
  ASSERT_EQ(simple.holes.size(), 1u);
  EXPECT_LT(simple.holes[0].size(), 30u);
  EXPECT_LT(geometry::area(simple.holes[0]), geometry::area(hole));
  EXPECT_GT(geometry::area(simple.holes[0]), geometry::area(hole) * 0.95);
}
TEST(SimplifyOutwards, ClosesNoBayWhoseMouthIsNarrow) {
  // A slot 0.02 wide that opens into a chamber: its two banks must not run into each other.
  const geometry::Polygon bottle{{{0, 0},
                                  {8, 0},
                                  {8, 6},
                                  {4.01, 6},
                                  {4.01, 4},
                                  {6, 4},
                                  {6, 2},
                                  {2, 2},
                                  {2, 4},
                                  {3.99, 4},
                                  {3.99, 6},
                                  {0, 6}},
                                 {}};
  const auto simple = simplify_outwards(bottle, 0.05);
  EXPECT_GE(geometry::area(simple), geometry::area(bottle) - 1e-9);
  EXPECT_NEAR(geometry::area(simple), geometry::area(bottle), 0.5);
}

}  // namespace
}  // namespace drapewright::cutting
