#include "core/cutting/sheet_sets.h"

#include <gtest/gtest.h>

#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

double cheapest(const Job& job) {
  const Scene scene(job);
  const SheetLimits limits(job, scene);
  auto all = limits.everything();
  all.cost = 1e300;
  const auto sets = limits.sets_before(all, 1);
  return sets.empty() ? -1 : sets.front().cost;
}

TEST(SheetSets, NeedRoomForTheArea) {
  Job job;
  job.pieces.assign(5, box(5, 4));
  job.sheets = {{10, 4, 3, 9}};
  EXPECT_EQ(cheapest(job), 9) << "100 cm2 on sheets of 40";
  job.gap_cm = 1;
  job.edge_gap_cm = 0;
  EXPECT_GT(cheapest(job), 9) << "the gap counts";
}

TEST(SheetSets, PiecesOfWhichNoTwoCanShareTakeASheetEach) {
  Job job;
  job.pieces.assign(3, {geometry::circle(6, {}, 60), {}});
  job.sheets = {{10, 10, 4, 9}};
  EXPECT_EQ(cheapest(job), 12) << "two of them would have room by area, three by no means";
}

TEST(SheetSets, EveryPieceNeedsAKindThatItFits) {
  Job job;
  job.pieces = {box(12, 1), box(1, 1)};
  job.sheets = {{10, 8, 1, 9}, {20, 12, 9, 9}};
  EXPECT_EQ(cheapest(job), 9);
  job.sheets[0].width_cm = 7;  // diagonal 12.2, and the piece is 1 wide: it does not fit
  EXPECT_EQ(cheapest(job), 9);
  job.pieces[0] = box(12.5, 0.2);
  job.sheets[0].width_cm = 8;  // but a slim one lies across
  EXPECT_EQ(cheapest(job), 1);
}

TEST(SheetSets, KeepToTheStock) {
  Job job;
  job.pieces.assign(4, box(9, 7));
  job.sheets = {{10, 8, 1, 3}};
  EXPECT_EQ(cheapest(job), -1);
  job.sheets[0].available = 4;
  EXPECT_EQ(cheapest(job), 4);
  job.sheets[0].available.reset();
  EXPECT_EQ(cheapest(job), 4);
}

TEST(SheetSets, ComeByCostThenByNumber) {
  Job job;
  job.pieces = {box(3, 3), box(3, 3)};
  job.sheets = {{10, 8, 2, {}}, {20, 12, 4, {}}};
  const Scene scene(job);
  const SheetLimits limits(job, scene);
  auto all = limits.everything();
  all.cost = 4.5;
  const auto sets = limits.sets_before(all, 10);
  ASSERT_EQ(sets.size(), 3u);
  EXPECT_EQ(sets[0].count, (std::vector<int>{1, 0}));
  EXPECT_EQ(sets[1].count, (std::vector<int>{0, 1}));
  EXPECT_EQ(sets[2].count, (std::vector<int>{2, 0}));
}

TEST(SheetSets, KnowPiecesThatFitNothing) {
  Job job;
  job.pieces = {box(25, 25), box(1, 1)};
  job.sheets = {{20, 12, 1, 9}};
  const Scene scene(job);
  EXPECT_EQ(SheetLimits(job, scene).placeable(), std::vector<int>{1});
}

}  // namespace
}  // namespace drapewright::cutting
