#include "core/cutting/split.h"

#include <gtest/gtest.h>

#include "core/base/error.h"
#include "core/cutting/fit.h"
#include "core/cutting/verify.h"
#include "core/geometry/circle.h"
#include "core/geometry/overlay.h"
#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

Job job_of(std::vector<geometry::Polygon> pieces) {
  Job job;
  job.pieces = std::move(pieces);
  job.sheets = {{30, 20, 600, {}}, {10, 8, 80, {}}};
  job.gap_cm = job.edge_gap_cm = 0.3;
  return job;
}

/// Every part fits a sheet; the parts of each piece make it up, nothing twice and nothing less;
/// every seam lies inside its piece.
void expect_whole(const Job& job, const SplitJob& split) {
  ASSERT_EQ(split.piece_of.size(), split.job.pieces.size());
  std::vector<geometry::Region> parts(job.pieces.size());
  for (std::size_t i = 0; i < split.job.pieces.size(); ++i) {
    const auto& part = split.job.pieces[i];
    bool fits = false;
    for (const auto& sheet : sheets_at_hand(job)) {
      fits = fits || turn_that_fits(part.outer, job, sheet).has_value();
    }
    EXPECT_TRUE(fits) << "part " << i;
    parts[static_cast<std::size_t>(split.piece_of[i])].push_back(part);
  }
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const geometry::Region piece{job.pieces[i]};
    const double rounding = 1e-4 * geometry::edge_length(piece);
    double sum = 0;
    geometry::Region together;
    for (const auto& part : parts[i]) {
      sum += geometry::area(part);
      together = geometry::unite(together, {part});
    }
    EXPECT_NEAR(sum, geometry::area(piece), rounding);
    EXPECT_LT(geometry::area(geometry::subtract(piece, together)), rounding);
    EXPECT_LT(geometry::area(geometry::subtract(together, piece)), rounding);
  }
  for (const auto& seam : split.seams) {
    const auto middle = 0.5 * (seam.line_cm.from + seam.line_cm.to);
    EXPECT_TRUE(geometry::intersect({job.pieces[static_cast<std::size_t>(seam.piece)]},
                                    {box(0.01, 0.01, middle - geometry::Point{0.005, 0.005})})
                    .size() > 0);
  }
}

TEST(Split, LeavesWhatFitsAlone) {
  const Job job = job_of({star(4, 2), box(25, 15), frame(15, 5)});
  const SplitJob split = split_to_fit(job);
  EXPECT_EQ(split.job.pieces, job.pieces);
  EXPECT_EQ(split.piece_of, (std::vector<int>{0, 1, 2}));
  EXPECT_TRUE(split.seams.empty());
}

TEST(Split, HalvesAnOvalThatIsALittleTooLong) {
  const Job job = job_of({{geometry::ellipse(40, 15), {}}});
  const SplitJob split = split_to_fit(job);
  expect_whole(job, split);
  ASSERT_EQ(split.job.pieces.size(), 2u);
  ASSERT_EQ(split.seams.size(), 1u);
  EXPECT_LE(geometry::distance(split.seams[0].line_cm.from, split.seams[0].line_cm.to), 15 + 1e-3);
  for (const auto& part : split.job.pieces) {
    EXPECT_GT(geometry::area(part), 0.4 * geometry::area(job.pieces[0]));
  }
}

TEST(Split, NeedsFourForASquareOfTwoByTwoSheets) {
  const Job job = job_of({box(38, 38)});
  const SplitJob split = split_to_fit(job);
  expect_whole(job, split);
  EXPECT_LE(split.job.pieces.size(), 4u);
}

TEST(Split, TellsWhichPartsCameFromWhichPiece) {
  const Job job = job_of({box(5, 5), box(50, 10), box(4, 4), frame(34, 20)});
  const SplitJob split = split_to_fit(job);
  expect_whole(job, split);
  EXPECT_TRUE(std::is_sorted(split.piece_of.begin(), split.piece_of.end()));
  EXPECT_EQ(std::count(split.piece_of.begin(), split.piece_of.end(), 0), 1);
  EXPECT_EQ(std::count(split.piece_of.begin(), split.piece_of.end(), 1), 2);
  EXPECT_EQ(std::count(split.piece_of.begin(), split.piece_of.end(), 2), 1);
  EXPECT_GE(std::count(split.piece_of.begin(), split.piece_of.end(), 3), 2);
  for (const auto& seam : split.seams) EXPECT_TRUE(seam.piece == 1 || seam.piece == 3);
}

TEST(Split, MakesNoSlivers) {
  for (const double length : {29.5, 31.0, 33.0, 59.5, 61.0}) {
    const Job job = job_of({{geometry::ellipse(length, 18, {}, 0, 60), {}}, ell(32, 9)});
    const SplitJob split = split_to_fit(job);
    expect_whole(job, split);
    for (const auto& part : split.job.pieces) {
      const auto circle = geometry::largest_inscribed_circle({part});
      ASSERT_TRUE(circle);
      EXPECT_GE(2 * circle->radius_cm, 2) << length;
    }
  }
}

TEST(Split, WhatWasSplitCanBeLaidOut) {
  Job job = job_of({{geometry::ellipse(70, 26, {3, -4}, 30), {}}, box(6, 6)});
  const SplitJob split = split_to_fit(job);
  expect_whole(job, split);
  Options options;
  options.max_steps = 300;
  const Layout layout = lay_out(split.job, options);
  EXPECT_EQ(find_fault(split.job, layout), std::nullopt);
  EXPECT_TRUE(layout.unplaced.empty());
}

TEST(Split, KeepsToTheTurnsAllowedAndToTheStrip) {
  Job job;
  job.pieces = {box(10, 30)};
  job.strip_width_cm = 12;
  job.rotations_deg = {{0}};
  const SplitJob split = split_to_fit(job);
  expect_whole(job, split);
  EXPECT_EQ(split.job.pieces.size(), 3u);
}

TEST(Split, LeavesWholeWhatNoCuttingHelps) {
  Job job = job_of({box(50, 50)});
  for (auto& sheet : job.sheets) sheet.available = 0;
  EXPECT_EQ(split_to_fit(job).job.pieces, job.pieces);
}

TEST(Split, RefusesALeastPartThatIsNone) {
  EXPECT_THROW(split_to_fit(job_of({box(5, 5)}), -1), InputError);
}

TEST(Split, StopsWhenToldTo) {
  std::stop_source stop;
  stop.request_stop();
  EXPECT_THROW(split_to_fit(job_of({box(50, 50)}), 2, Progress(stop.get_token())), Cancelled);
}

}  // namespace
}  // namespace drapewright::cutting
