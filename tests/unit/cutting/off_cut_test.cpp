#include "core/cutting/off_cut.h"

#include <gtest/gtest.h>

#include "core/cutting/layout.h"
#include "core/cutting/verify.h"
#include "core/geometry/distance.h"
#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

double area(const geometry::Box& box) { return box.width() * box.height(); }

void expect_box(const geometry::Box& box, geometry::Point low, geometry::Point high) {
  EXPECT_NEAR(box.low.x, low.x, 1e-9);
  EXPECT_NEAR(box.low.y, low.y, 1e-9);
  EXPECT_NEAR(box.high.x, high.x, 1e-9);
  EXPECT_NEAR(box.high.y, high.y, 1e-9);
}

TEST(OffCut, IsTheWholeSheetWhereNothingIsCut) {
  expect_box(largest_off_cut(20, 12, {}, 0.3), {0, 0}, {20, 12});
}

TEST(OffCut, IsExactBesideSquarePieces) {
  expect_box(largest_off_cut(20, 12, {box(7, 12)}, 0), {7, 0}, {20, 12});
  expect_box(largest_off_cut(20, 12, {box(7, 12)}, 0.3), {7.3, 0}, {20, 12});
  // 4 x 12 to the right or 20 x 4 above: 48 against 80.
  expect_box(largest_off_cut(20, 12, {box(16, 8)}, 0), {0, 8}, {20, 12});
}

TEST(OffCut, MayLieBetweenPiecesAndInHoles) {
  expect_box(largest_off_cut(20, 12, {box(5, 12), box(4, 12, {16, 0})}, 0.5), {5.5, 0}, {15.5, 12});
  auto ring = frame(10, 8);
  expect_box(largest_off_cut(10, 10, {ring}, 0), {1, 1}, {9, 9});
}

TEST(OffCut, BesideASlantIsShortByNoMoreThanAColumn) {
  // Right of the diagonal of a 10 x 10 sheet the largest rectangle is 5 x 5.
  const geometry::Polygon half{{{0, 0}, {10, 10}, {0, 10}}, {}};
  const double found = area(largest_off_cut(10, 10, {half}, 0));
  EXPECT_LE(found, 25 + 1e-9);
  EXPECT_GE(found, 25 - 2 * 10.0 / 200 * 5);
}

TEST(OffCut, NothingIsLeftOfAFullSheet) {
  EXPECT_EQ(area(largest_off_cut(10, 10, {box(10, 10)}, 0)), 0);
}

TEST(OffCut, KeepsTheGapToRoundAndConcavePieces) {
  const geometry::Polygon round{geometry::circle(8, {5, 5}), {}};
  auto spiky = star(3, 1.2);
  for (auto& p : spiky.outer) p = p + geometry::Point{13, 5};
  for (const double gap : {0.0, 0.3, 1.0}) {
    const auto found = largest_off_cut(20, 12, {round, spiky}, gap);
    const geometry::Region rest{box(found.width(), found.height(), found.low)};
    ASSERT_GT(area(found), 1);
    for (const auto& piece : {round, spiky}) {
      EXPECT_FALSE(geometry::contains(piece, 0.5 * (found.low + found.high)));
      EXPECT_GE(geometry::gap_between_edges(rest, {piece}).distance_cm, gap - 1e-9);
    }
  }
}

TEST(LayOut, LeavesALargeOffCutOnceNothingCheaperIsThere) {
  Job job;
  job.pieces = {box(6, 4), box(6, 4), box(6, 4), box(2, 12)};
  job.sheets = {{20, 12, 1, 1}};
  Options options;
  options.max_steps = 40000;
  const Layout layout = lay_out(job, options);
  EXPECT_EQ(find_fault(job, layout), std::nullopt);
  EXPECT_NEAR(layout.off_cut_cm2, 12 * 12, 0.02 * 144);
  EXPECT_LE(layout.off_cut_cm2, 12 * 12 + 1e-6);
}

TEST(LayOut, AnOffCutTooNarrowIsWaste) {
  Job job;
  job.pieces = {box(18, 11)};
  job.sheets = {{20, 12, 1, 1}};
  job.least_off_cut_cm = 3;
  EXPECT_EQ(lay_out(job).off_cut_cm2, 0);
  job.least_off_cut_cm = 0.5;
  EXPECT_GT(lay_out(job).off_cut_cm2, 0);
}

}  // namespace
}  // namespace drapewright::cutting
