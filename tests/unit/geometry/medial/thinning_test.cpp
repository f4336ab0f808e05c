#include "core/geometry/medial/thinning.h"

#include <gtest/gtest.h>

#include <limits>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "tests/support/made_outlines.h"

namespace drapewright::geometry::medial {
namespace {

double farthest_from(const Ring& ring, const Ring& edge) {
  double farthest = 0;
  for (const Point p : ring) {
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < edge.size(); ++i)
      nearest =
          std::min(nearest, distance(p, nearest_on({edge[i], edge[(i + 1) % edge.size()]}, p)));
    farthest = std::max(farthest, nearest);
  }
  return farthest;
}

TEST(Thinning, StaysWithinItsToleranceAndSaysHowFarItWent) {
  support::OutlineMaker maker(21);
  for (int i = 0; i < 100; ++i) {
    const Ring ring = i % 2 == 0 ? maker.blob(600, maker.between(0.5, 20))
                                 : maker.staircase(400, maker.between(0.2, 5));
    for (const double tolerance : {1e-4, 1e-3, 2e-2}) {
      const Thinned thin = thinned(ring, static_cast<std::size_t>(maker.whole(0, 99)), tolerance);
      EXPECT_LE(thin.stray, tolerance * (1 + 1e-9));
      EXPECT_LE(farthest_from(ring, thin.ring), thin.stray + 1e-12);
      EXPECT_LE(thin.ring.size(), ring.size());
    }
  }
}

TEST(Thinning, LeavesOutWhatIsStraight) {
  Ring dense;
  for (const Point corner : {Point{0, 0}, Point{4, 0}, Point{4, 3}, Point{0, 3}})
    for (int i = 0; i < 50; ++i) {
      const Point along = corner.y == 0 ? (corner.x == 0 ? Point{4, 0} : Point{0, 3})
                                        : (corner.x == 4 ? Point{-4, 0} : Point{0, -3});
      dense.push_back(corner + (i / 50.0) * along);
    }
  EXPECT_EQ(thinned(dense, 0, 1e-3).ring.size(), 4U);
  EXPECT_LE(thinned(dense, 0, 1e-3).stray, 1e-12);
  EXPECT_EQ(thinned(dense, 77, 1e-3).ring.size(), 5U);  // the start is kept
}

TEST(Thinning, KeepsARingARing) {
  EXPECT_EQ(thinned(circle(1e-4, {}, 30), 0, 1e-3).ring.size(), 30U);
  EXPECT_EQ(thinned(circle(2, {}, 300), 0, 0).ring.size(), 300U);
}

}  // namespace
}  // namespace drapewright::geometry::medial
