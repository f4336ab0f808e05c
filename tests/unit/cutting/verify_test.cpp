#include "core/cutting/verify.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/cutting/turn.h"
#include "tests/unit/cutting/shapes_for_tests.h"

namespace drapewright::cutting {
namespace {

using testing::HasSubstr;
using testing::Optional;

Placement place(const Job& job, int piece, double angle_deg, geometry::Point shift) {
  Placement result{piece, angle_deg, shift, job.pieces[static_cast<std::size_t>(piece)]};
  const Turn turn = Turn::by_deg(angle_deg);
  auto move = [&](geometry::Ring& ring) {
    for (auto& p : ring) p = turn(p) + shift;
  };
  move(result.outline_cm.outer);
  for (auto& hole : result.outline_cm.holes) move(hole);
  return result;
}

/// A frame with a box in its hole and an ell beside it, 0.3 cm apart, on one sheet of two.
class SoundLayout : public testing::Test {
 protected:
  SoundLayout() {
    job.pieces = {frame(6, 3), box(2.4, 2), ell(5, 1)};
    job.sheets = {{20, 12, 5, 1}, {10, 8, 2, 1}};
    job.gap_cm = job.edge_gap_cm = 0.3;
    layout.sheets = {{0, 20, 12, 5, {}}};
    lay(0, 0, {0.3, 0.3});
    lay(1, 0, {2.1, 2.3});
    lay(2, 90, {11.7, 0.5});
    layout.cost = 5;
  }
  void lay(int piece, double angle, geometry::Point shift) {
    layout.sheets[0].placements.push_back(place(job, piece, angle, shift));
  }
  void move(std::size_t k, double angle, geometry::Point shift) {
    auto& placement = layout.sheets[0].placements[k];
    placement = place(job, placement.piece, angle, shift);
  }
  std::vector<Placement>& placements() { return layout.sheets[0].placements; }
  Job job;
  Layout layout;
};

TEST_F(SoundLayout, IsAccepted) { EXPECT_EQ(find_fault(job, layout), std::nullopt); }

TEST_F(SoundLayout, WithAPieceMissingIsRefused) {
  placements().pop_back();
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("piece 3 is missing")));
  layout.unplaced = {2};
  EXPECT_EQ(find_fault(job, layout), std::nullopt) << "it is said that it is not placed";
}
TEST_F(SoundLayout, WithAPieceTwiceIsRefused) {
  lay(1, 0, {15, 6});
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("more than once")));
}
TEST_F(SoundLayout, WithAStrangePieceIsRefused) {
  layout.unplaced = {3};
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("does not have")));
}
TEST_F(SoundLayout, OverTheEdgeIsRefused) {
  move(0, 0, {0.29, 0.3});
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("edge")));
}
TEST_F(SoundLayout, WithTooSmallAGapIsRefused) {
  move(1, 0, {2.1, 2.09});
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("nearer than 0.3")));
}
TEST_F(SoundLayout, WithAGapShortByMoreThanRoundingIsRefused) {
  move(1, 0, {2.1 - 3e-5, 2.3});
  EXPECT_NE(find_fault(job, layout), std::nullopt);
  move(1, 0, {2.1 - 1e-6, 2.3});
  EXPECT_EQ(find_fault(job, layout), std::nullopt);
}
TEST_F(SoundLayout, WithCrossingPiecesIsRefused) {
  move(2, 45, {8, 3});
  EXPECT_NE(find_fault(job, layout), std::nullopt);
}
TEST_F(SoundLayout, WithAPieceInsideAnothersMaterialIsRefused) {
  job.pieces[0] = box(6, 6);
  placements()[0] = place(job, 0, 0, {0.3, 0.3});
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("overlap")));
}
TEST_F(SoundLayout, WithAReshapedPieceIsRefused) {
  placements()[2].outline_cm.outer[1].x += 1e-3;
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("not the shape")));
}
TEST_F(SoundLayout, WithAMirroredPieceIsRefused) {
  for (auto& p : placements()[2].outline_cm.outer) p.y = 6 - p.y;
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("not the shape")));
}
TEST_F(SoundLayout, WithAClosedHoleIsRefused) {
  placements()[0].outline_cm.holes.clear();
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("not the shape")));
}
TEST_F(SoundLayout, TurnedByWhatIsNotAllowedIsRefused) {
  job.rotations_deg = {{0, 180}};
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("turned")));
  job.rotations_deg = {{0, -270}};
  EXPECT_EQ(find_fault(job, layout), std::nullopt) << "-270 is 90";
}
TEST_F(SoundLayout, OnMoreSheetsThanThereAreIsRefused) {
  layout.sheets.push_back(layout.sheets[0]);
  layout.sheets[1].placements = {placements()[2]};
  placements().pop_back();
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("more sheets")));
}
TEST_F(SoundLayout, OnASheetOfAnotherSizeIsRefused) {
  layout.sheets[0].length_cm = 21;
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("another size")));
}

TEST(Verify, TouchingPiecesAreSoundWithoutAGapAndOverlappingOnesAreNot) {
  Job job;
  job.pieces = {star(3, 1.2), star(3, 1.2)};
  job.strip_width_cm = 10;
  Layout layout;
  layout.sheets = {{-1, 12, 10, 12, {}}};
  auto& placements = layout.sheets[0].placements;
  placements = {place(job, 0, 0, {3, 3}), place(job, 1, 180, {3, 3})};
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("overlap"))) << "one upon the other";
  // Mirrored at one of the slanted edges: they share it, on no grid point.
  const auto& ring = placements[0].outline_cm.outer;
  const geometry::Point middle = 0.5 * (ring[9] + ring[0]);
  placements[1] = place(job, 1, 180, 2 * middle - geometry::Point{3, 3});
  EXPECT_EQ(find_fault(job, layout), std::nullopt);
  placements[1] = place(job, 1, 180, 2 * middle - geometry::Point{3.001, 3.001});
  EXPECT_THAT(find_fault(job, layout), Optional(HasSubstr("overlap")));
}

}  // namespace
}  // namespace drapewright::cutting
