#include <gtest/gtest.h>

#include "core/cutting/layout.h"
#include "core/cutting/verify.h"
#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

Options steps(std::int64_t most, std::uint64_t seed = 1) {
  Options options;
  options.seed = seed;
  options.max_steps = most;
  return options;
}

/// Ten pieces of several forms for sheets of three sizes, any angle.
Job mixed_job() {
  Job job;
  job.pieces = {ell(6, 2),   star(4, 2),   box(7, 3),
                frame(6, 3), box(2, 2),    ell(5, 1.5),
                box(5, 2.5), star(3, 1.2), {geometry::ellipse(8, 5, {}, 0, 40), {}},
                box(3, 3)};
  job.sheets = {{10, 8, 80, 8}, {20, 12, 240, 8}, {30, 20, 600, 8}};
  job.gap_cm = 0.3;
  job.edge_gap_cm = 0.3;
  return job;
}

void expect_same(const Layout& a, const Layout& b) {
  ASSERT_EQ(a.sheets.size(), b.sheets.size());
  EXPECT_EQ(a.cost, b.cost);
  for (std::size_t s = 0; s < a.sheets.size(); ++s) {
    ASSERT_EQ(a.sheets[s].placements.size(), b.sheets[s].placements.size());
    for (std::size_t k = 0; k < a.sheets[s].placements.size(); ++k) {
      EXPECT_EQ(a.sheets[s].placements[k].outline_cm, b.sheets[s].placements[k].outline_cm);
    }
  }
}

TEST(LayOut, IsSoundCompleteAndNoCheaperThanItsBound) {
  const Job job = mixed_job();
  const Layout layout = lay_out(job, steps(3000));
  EXPECT_EQ(find_fault(job, layout), std::nullopt);
  EXPECT_TRUE(layout.unplaced.empty());
  EXPECT_GE(layout.cost, layout.bound);
  EXPECT_GT(layout.bound, 0);
  EXPECT_GT(layout.density_percent, 30);
}

TEST(LayOut, EveryLayoutOnTheWayIsSoundAndBetterThanTheOneBefore) {
  const Job job = mixed_job();
  double cost = 1e300;
  int told = 0;
  Options options = steps(3000);
  options.on_better = [&](const Layout& layout) {
    EXPECT_EQ(find_fault(job, layout), std::nullopt);
    EXPECT_LE(layout.cost, cost);
    cost = layout.cost;
    ++told;
  };
  EXPECT_EQ(lay_out(job, options).cost, cost);
  EXPECT_GE(told, 1);
}

TEST(LayOut, SameSeedAndStepsSameLayout) {
  const Job job = mixed_job();
  expect_same(lay_out(job, steps(2000, 7)), lay_out(job, steps(2000, 7)));
}

TEST(LayOut, LaysAllInRowsHoweverLittleTimeThereIs) {
  Options options;
  options.out_of_time = [] { return true; };
  const Layout layout = lay_out(mixed_job(), options);
  EXPECT_EQ(find_fault(mixed_job(), layout), std::nullopt);
  EXPECT_TRUE(layout.unplaced.empty());
}

TEST(LayOut, RowsFillASheetOfEqualBoxesExactly) {
  Job job;
  job.sheets = {{20, 12, 240, {}}};
  job.pieces = std::vector<geometry::Polygon>(20, box(4, 3));
  const Layout layout = lay_out(job, {.max_work = 0});
  EXPECT_EQ(layout.sheets.size(), 1u);
  EXPECT_TRUE(layout.proven_best());
}

TEST(LayOut, StripsHaveARowLayoutToo) {
  Job job = mixed_job();
  job.sheets.clear();
  job.strip_width_cm = 12;
  const Layout layout = lay_out(job, {.max_work = 0});
  EXPECT_EQ(find_fault(job, layout), std::nullopt);
  EXPECT_TRUE(layout.unplaced.empty());
}

/// However many corners there are, it ends soon after the work that was allowed.
TEST(LayOut, WorkIsBoundedAndMoreOfItIsNeverWorse) {
  const Job job = mixed_job();
  double cost = 1e300;
  for (const std::int64_t work : {0, 20'000, 200'000, 2'000'000}) {
    const Layout layout = lay_out(job, {.max_work = work});
    EXPECT_EQ(find_fault(job, layout), std::nullopt);
    EXPECT_LE(layout.cost, cost);
    cost = layout.cost;
    expect_same(layout, lay_out(job, {.max_work = work}));
  }
}

TEST(LayOut, CheapestWillDoEndsOnceNothingCanCostLess) {
  Job job;
  job.sheets = {{20, 12, 240, {}}};
  job.pieces = {ell(6, 2), star(4, 2)};
  EXPECT_TRUE(lay_out(job, {.cheapest_will_do = true}).proven_best());
}

TEST(LayOut, StopsWhenToldTo) {
  std::stop_source stop;
  Options options;
  int asked = 0;
  options.out_of_time = [&] {
    if (++asked == 500) stop.request_stop();
    return false;
  };
  EXPECT_THROW(lay_out(mixed_job(), options, Progress(stop.get_token())), Cancelled);
  EXPECT_LE(asked, 501);
}

TEST(LayOut, UsesHolesAndBays) {
  Job job;
  job.pieces = {frame(8, 5), box(4.4, 4.4)};
  job.sheets = {{8.6, 8.6, 1, {}}};
  job.gap_cm = job.edge_gap_cm = 0.3;
  const Layout layout = lay_out(job, steps(2000));
  EXPECT_EQ(layout.sheets.size(), 1u);
  EXPECT_TRUE(layout.unplaced.empty());
  EXPECT_TRUE(layout.proven_best());
}

TEST(LayOut, FindsAFitThatLeavesNothing) {
  // A square of 10 cut by straight lines through (4, 5): four pieces, no gap.
  Job job;
  const geometry::Point c{4, 5}, a{3, 0}, b{10, 6}, d{5, 10}, e{0, 4};
  job.pieces = {{{{0, 0}, a, c, e}, {}},
                {{a, {10, 0}, b, c}, {}},
                {{c, b, {10, 10}, d}, {}},
                {{e, c, d, {0, 10}}, {}}};
  job.rotations_deg = {{0}};
  job.strip_width_cm = 10;
  const Layout layout = lay_out(job, steps(20000));
  EXPECT_NEAR(layout.density_percent, 100, 1e-6);
  EXPECT_TRUE(layout.proven_best());
}

TEST(LayOut, LeavesOutWhatFitsNoSheetAndSaysSo) {
  Job job;
  job.pieces = {box(25, 25), box(5, 5)};
  job.sheets = {{20, 12, 1, 3}};
  const Layout layout = lay_out(job, steps(100));
  EXPECT_EQ(layout.unplaced, std::vector<int>{0});
  EXPECT_EQ(layout.sheets.size(), 1u);
  EXPECT_EQ(find_fault(job, layout), std::nullopt);
}

TEST(LayOut, TurnsOnlyAsAllowed) {
  Job job;
  job.pieces = {box(9, 1), box(9, 1)};
  job.strip_width_cm = 4;
  job.rotations_deg = {{0, 180}};
  EXPECT_NEAR(lay_out(job, steps(500)).cost, 9, 1e-9);
}

}  // namespace
}  // namespace drapewright::cutting
