#include "core/cutting/no_fit.h"

#include <gtest/gtest.h>

#include "core/cutting/random.h"
#include "core/geometry/distance.h"
#include "core/geometry/overlay.h"
#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

double depth_at(const NoFit& no_fit, Point p) {
  double sum = 0;
  for (const auto& cell : no_fit.cells) sum += no_fit.depth(cell, p);
  return sum;
}

geometry::Polygon placed(const geometry::Polygon& piece, const StandIn& stand_in, double angle,
                         Point at) {
  geometry::Polygon result = piece;
  const Turn turn = Turn::by_deg(angle);
  auto move = [&](geometry::Ring& ring) {
    for (auto& p : ring) p = turn(p - stand_in.reference) + at;
  };
  move(result.outer);
  for (auto& hole : result.holes) move(hole);
  return result;
}

class Pair : public testing::Test {
 protected:
  void set(const geometry::Polygon& fixed, double fixed_angle, const geometry::Polygon& moving,
           double moving_angle, double gap) {
    const StandIn a = make_stand_in(fixed), b = make_stand_in(moving);
    Oriented oa, ob;
    orient(a, fixed_angle, oa);
    orient(b, moving_angle, ob);
    make_no_fit(oa, ob, gap, no_fit);
    fixed_ = {placed(fixed, a, fixed_angle, {})};
    moving_ = [=](Point at) { return geometry::Region{placed(moving, b, moving_angle, at)}; };
  }
  geometry::Region fixed_;
  std::function<geometry::Region(Point)> moving_;
  NoFit no_fit;
};

// The judge is the overlay on an integer grid, which knows nothing of no-fit polygons.
TEST_F(Pair, HasDepthExactlyWhereThePiecesOverlap) {
  Random random(5);
  const geometry::Polygon shapes[] = {ell(5, 1.3), star(4, 1.5), frame(6, 3.1), box(3, 2)};
  int overlapping = 0, apart = 0;
  for (int round = 0; round < 60; ++round) {
    set(shapes[round % 4], random.between(0, 360), shapes[(round / 4) % 4], random.between(0, 360),
        0);
    for (int k = 0; k < 20; ++k) {
      const Point at{random.between(-7, 7), random.between(-7, 7)};
      const double common = geometry::area(geometry::intersect(fixed_, moving_(at)));
      const double depth = depth_at(no_fit, at);
      if (common > 1e-3) {
        EXPECT_GT(depth, 0);
      }
      if (common == 0) {
        EXPECT_LT(depth, 1e-2);
      }
      ++(common > 0 ? overlapping : apart);
    }
  }
  EXPECT_GT(overlapping, 100);
  EXPECT_GT(apart, 100);
}

TEST_F(Pair, KeepsTheGapAndWastesLittleOfIt) {
  Random random(6);
  for (int round = 0; round < 40; ++round) {
    set(ell(5, 1.3), random.between(0, 360), star(3, 1.2), random.between(0, 360), 0.3);
    for (int k = 0; k < 20; ++k) {
      const Point at{random.between(-7, 7), random.between(-7, 7)};
      if (geometry::overlap(fixed_, moving_(at))) continue;
      const double gap = geometry::gap_between_edges(fixed_, moving_(at)).distance_cm;
      if (gap < 0.3 - 1e-9) {
        EXPECT_GT(depth_at(no_fit, at), 0);
      }
      if (gap > 0.3 * 1.09) {
        EXPECT_EQ(depth_at(no_fit, at), 0);
      }
    }
  }
}

TEST_F(Pair, TouchingIsNoOverlap) {
  set(box(4, 3), 0, box(2, 1), 90, 0);
  EXPECT_EQ(depth_at(no_fit, {2.5, 0}), 0) << "side by side";
  EXPECT_NEAR(depth_at(no_fit, {2.4, 0}), 0.1, 1e-12);
  EXPECT_EQ(depth_at(no_fit, {2.5, 2.5}), 0) << "corner at corner";
}

TEST_F(Pair, LeavesTheHoleFree) {
  set(frame(6, 3), 0, box(2, 2), 0, 0.3);
  EXPECT_EQ(depth_at(no_fit, {0, 0}), 0);
  EXPECT_EQ(depth_at(no_fit, {0.2, -0.2}), 0);
  EXPECT_GT(depth_at(no_fit, {0.21, 0}), 0);
}

TEST(NoFitTable, MakesEachCataloguedPairOnce) {
  NoFitTable table(2, 0);
  const StandIn piece = make_stand_in(box(2, 1));
  Oriented a, b, loose;
  orient(piece, 0, a);
  orient(piece, 90, b);
  orient(piece, 45, loose);
  a.id = 0;
  b.id = 1;
  NoFit scratch;
  EXPECT_EQ(&table.between(a, b, scratch), &table.between(a, b, scratch));
  EXPECT_NE(&table.between(a, b, scratch), &table.between(b, a, scratch));
  EXPECT_EQ(&table.between(a, loose, scratch), &scratch);
}

}  // namespace
}  // namespace drapewright::cutting
