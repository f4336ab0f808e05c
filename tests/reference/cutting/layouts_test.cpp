// Layouts of the cutting room judged by GEOS, which shares no code with its own verification.

#include <gtest/gtest.h>

#include "core/cutting/layout.h"
#include "core/cutting/verify.h"
#include "tests/support/layout_judge.h"
#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

/// Wound-like pieces, some with islands, for the generic sheets.
Job made_job(unsigned seed) {
  Job job{.sheets = {{10, 8, 80, 8}, {20, 12, 240, 8}, {30, 20, 600, 8}},
          .gap_cm = 0.3,
          .edge_gap_cm = 0.3};
  for (unsigned i = 0; i < 8; ++i) {
    const double size = 2 + (seed * 8 + i) % 6;
    job.pieces.push_back(
        i % 4 == 0   ? frame(size + 2, size / 2)
        : i % 4 == 1 ? star(size, size / 3)
        : i % 4 == 2 ? ell(size, size / 3)
                     : geometry::Polygon{geometry::ellipse(size + 2, size, {}, 10.0 * i, 30), {}});
  }
  return job;
}

Layout laid_out(const Job& job, unsigned seed) {
  return lay_out(job, {.seed = seed, .max_steps = 400});
}

TEST(LayoutsJudgedByGeos, AreSoundForMadeJobs) {
  for (unsigned seed = 1; seed <= 6; ++seed) {
    const Job job = made_job(seed);
    const Layout layout = laid_out(job, seed);
    EXPECT_EQ(support::fault_by_geos(job, layout), std::nullopt) << "seed " << seed;
    EXPECT_TRUE(layout.unplaced.empty());
  }
}

TEST(LayoutsJudgedByGeos, BothJudgesRefuseAPieceThatWasShifted) {
  const Job job = made_job(1);
  Layout layout = laid_out(job, 1);
  Placement& piece = layout.sheets.front().placements.front();
  piece.shift_cm.x += 40;
  for (geometry::Point& p : piece.outline_cm.outer) p.x += 40;
  for (auto& hole : piece.outline_cm.holes) {
    for (geometry::Point& p : hole) p.x += 40;
  }
  EXPECT_NE(support::fault_by_geos(job, layout), std::nullopt);
  EXPECT_NE(find_fault(job, layout), std::nullopt);
}

TEST(LayoutsJudgedByGeos, BothJudgesRefuseAPieceThatIsMissing) {
  const Job job = made_job(2);
  Layout layout = laid_out(job, 2);
  layout.sheets.front().placements.pop_back();
  EXPECT_NE(support::fault_by_geos(job, layout), std::nullopt);
  EXPECT_NE(find_fault(job, layout), std::nullopt);
}

TEST(LayoutsJudgedByGeos, BothJudgesRefuseAnotherShape) {
  const Job job = made_job(3);
  Layout layout = laid_out(job, 3);
  layout.sheets.front().placements.front().outline_cm.outer.front().x += 0.05;
  EXPECT_NE(support::fault_by_geos(job, layout), std::nullopt);
  EXPECT_NE(find_fault(job, layout), std::nullopt);
}

}  // namespace
}  // namespace drapewright::cutting
