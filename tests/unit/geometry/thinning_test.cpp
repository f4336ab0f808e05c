#include "core/geometry/thinning.h"

#include <gtest/gtest.h>

#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

Ring wavy(int points) {
  Ring ring;
  for (int i = 0; i < points; ++i) {
    const double t = 2 * pi * i / points;
    ring.push_back((4 + 0.6 * std::sin(7 * t)) * Point{std::cos(t), std::sin(t)});
  }
  return ring;
}

double farthest_from(const Ring& ring, const Ring& from) {
  const EdgeIndex edges(Region{{from, {}}});
  double farthest = 0;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    for (const double t : {0.0, 0.3, 0.5, 0.8}) {
      const Point p = ring[i] + t * (ring[(i + 1) % ring.size()] - ring[i]);
      farthest = std::max(farthest, edges.nearest(p).distance_cm);
    }
  }
  return farthest;
}

TEST(Thinning, StaysWithinItsToleranceBothWays) {
  const Ring ring = wavy(3000);
  for (const double tolerance : {1e-4, 1e-3, 1e-2}) {
    const Ring thin = thinned(ring, tolerance);
    EXPECT_LT(thin.size(), ring.size() / 2);
    EXPECT_LE(farthest_from(ring, thin), tolerance + 1e-12);
    EXPECT_LE(farthest_from(thin, ring), tolerance + 1e-12);
  }
}

TEST(Thinning, LeavesLittleOfWhatIsNarrowerThanTheTolerance) {
  EXPECT_LT(thinned(rectangle(5, 1e-4), 1e-3).size(), 3u);
  EXPECT_EQ(thinned(rectangle(5, 1), 1e-3).size(), 4u);
}

TEST(WithoutDents, FillsOnlyOutwardsOrCutsOnlyInwards) {
  Ring stairs{{10, 0}, {10, 10}};
  for (int i = 99; i >= 0; --i) {
    stairs.push_back({0.1 * i, 0.1 * (i + 1)});
    stairs.push_back({0.1 * i, 0.1 * i});
  }
  const double before = signed_area(stairs);
  ASSERT_GT(before, 0);
  const Ring filled = without_dents(stairs, 0.3, Dents::fill_outer);
  const Ring cut = without_dents(stairs, 0.3, Dents::cut_off);
  EXPECT_LT(filled.size(), stairs.size() * 2 / 3);
  EXPECT_LT(cut.size(), stairs.size() * 2 / 3);
  EXPECT_GT(signed_area(filled), before);
  EXPECT_LT(signed_area(cut), before);
  for (const Point& p : stairs) EXPECT_TRUE(contains(Polygon{filled, {}}, p));
  for (const Point& p : cut) EXPECT_TRUE(contains(Polygon{stairs, {}}, p));
}

TEST(WithoutDents, LeavesWideMouthsAndDeepPocketsOpen) {
  // A pocket that widens behind a narrow mouth must not be filled as if it were shallow.
  const Ring flask{{0, 0}, {10, 0}, {10, 10}, {5.05, 10}, {5.05, 8},  {8, 8},
                   {8, 2}, {2, 2},  {2, 8},   {4.95, 8},  {4.95, 10}, {0, 10}};
  EXPECT_EQ(without_dents(flask, 0.2, Dents::fill_outer), flask);
  EXPECT_EQ(without_dents(wavy(40), 0.2, Dents::fill_outer), wavy(40));
}

TEST(Jitter, MovesLittleAndRepeatably) {
  std::uint64_t seed = 5;
  std::uint64_t same_seed = 5;
  const Ring ring = wavy(200);
  const Ring moved_a_little = jittered(ring, 1e-5, seed);
  EXPECT_EQ(moved_a_little, jittered(ring, 1e-5, same_seed));
  EXPECT_NE(moved_a_little, jittered(ring, 1e-5, seed));
  for (std::size_t i = 0; i < ring.size(); ++i) {
    EXPECT_LE(std::abs(moved_a_little[i].x - ring[i].x), 1e-5);
    EXPECT_LE(std::abs(moved_a_little[i].y - ring[i].y), 1e-5);
  }
}

}  // namespace
}  // namespace drapewright::geometry
