#include "core/geometry/offset_check.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/geometry/offset.h"
#include "core/geometry/shapes.h"
#include "core/geometry/validity.h"

namespace drapewright::geometry {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

constexpr double error_cm = 0.005;

/// What the check says about results that are wrong in the ways that a buffer was seen to be.
std::string doubt_about(const Region& source, Direction direction, double distance_cm,
                        const Region& result) {
  const EdgeTree edges(edges_of(source));
  return find_doubt({source, edges, direction, distance_cm, error_cm},
                    {source, distance_cm + error_cm}, result);
}

/// A dumbbell whose inset at 0.3 has two parts.
const Region dumbbell{{{{0, 0},
                        {3, 0},
                        {3, 1.3},
                        {6, 1.3},
                        {6, 0},
                        {9, 0},
                        {9, 3},
                        {6, 3},
                        {6, 1.7},
                        {3, 1.7},
                        {3, 3},
                        {0, 3}},
                       {}}};

TEST(OffsetCheck, TrustsWhatIsRight) {
  EXPECT_THAT(doubt_about(dumbbell, Direction::inwards, 0.3, inset(dumbbell, 0.3).region),
              IsEmpty());
  EXPECT_THAT(doubt_about(dumbbell, Direction::outwards, 5, outset(dumbbell, 5).region), IsEmpty());
}

TEST(OffsetCheck, MissesALostPiece) {
  Region result = inset(dumbbell, 0.3).region;
  ASSERT_EQ(result.size(), 2u);
  result.pop_back();
  EXPECT_THAT(doubt_about(dumbbell, Direction::inwards, 0.3, result), HasSubstr("missing"));
}

TEST(OffsetCheck, MissesASmallLostPiece) {
  // The second part's inset is only 0.04 cm across.
  const Region source{{{{0, 0},
                        {3, 0},
                        {3, 1.3},
                        {6, 1.3},
                        {6, 1.18},
                        {6.64, 1.18},
                        {6.64, 1.82},
                        {6, 1.82},
                        {6, 1.7},
                        {3, 1.7},
                        {3, 3},
                        {0, 3}},
                       {}}};
  Region result = inset(source, 0.3).region;
  ASSERT_EQ(result.size(), 2u);
  const bool first_is_small = result[0].outer.front().x > 5;
  result.erase(result.begin() + (first_is_small ? 0 : 1));
  EXPECT_THAT(doubt_about(source, Direction::inwards, 0.3, result), HasSubstr("missing"));
}

TEST(OffsetCheck, ComesTooNear) {
  const Region nearer = inset(dumbbell, 0.29).region;
  EXPECT_THAT(doubt_about(dumbbell, Direction::inwards, 0.3, nearer), HasSubstr("as near as"));
  const Region narrower = outset(dumbbell, 4.99).region;
  EXPECT_THAT(doubt_about(dumbbell, Direction::outwards, 5, narrower), HasSubstr("as near as"));
}

TEST(OffsetCheck, ComesTooNearOnlyAlongAnEdge) {
  // All corners keep their distance, but one edge cuts across the island's corner.
  const Region source = tidy({rectangle(10, 10), {rectangle(2, 2)}}).region;
  Region result = inset(source, 1).region;
  auto& hole = result[0].holes[0];
  std::erase_if(hole, [](Point p) { return p.x > 1.1 && p.y > 1.1; });
  EXPECT_THAT(doubt_about(source, Direction::inwards, 1, result), HasSubstr("as near as"));
}

TEST(OffsetCheck, Strays) {
  const Region farther = inset(dumbbell, 0.31).region;
  EXPECT_THAT(doubt_about(dumbbell, Direction::inwards, 0.3, farther), HasSubstr("strays"));
  // A corner cut off by a straight edge strays between its ends.
  const Region source{{rectangle(4, 4), {}}};
  const Region cut{{{{-1.7, -1.7}, {1.7, -1.7}, {1.7, 1.4}, {1.4, 1.7}, {-1.7, 1.7}}, {}}};
  EXPECT_THAT(doubt_about(source, Direction::inwards, 0.299, cut), HasSubstr("strays"));
}

TEST(OffsetCheck, FindsAnOutsetsFalseHole) {
  const Region source{{rectangle(4, 4), {}}};
  Region result = outset(source, 1).region;
  result[0].holes.push_back({{0, 0}, {0, 0.1}, {0.1, 0}});
  EXPECT_THAT(doubt_about(source, Direction::outwards, 1, result), HasSubstr("wrong side"));
  const Region ring = tidy({circle(20), {circle(14)}}).region;
  Region filled = outset(ring, 2).region;
  filled[0].holes.clear();
  EXPECT_THAT(doubt_about(ring, Direction::outwards, 2, filled), HasSubstr("too much"));
}

TEST(OffsetCheck, FindsAFilledGapBetweenArcs) {
  // Three specks whose borders meet all round a gap: its edge is made of arcs alone, and no edge
  // of a speck looks towards it.
  Region specks;
  for (const double angle : {90.0, 210.0, 330.0}) {
    const Point centre = turned(Point{2.19, 0}, angle);
    specks.push_back({rectangle(0.02, 0.02, centre, angle + 45), {}});
  }
  Region filled = outset(specks, 2).region;
  ASSERT_EQ(filled.size(), 1u);
  ASSERT_EQ(filled[0].holes.size(), 1u);
  filled[0].holes.clear();
  EXPECT_THAT(doubt_about(specks, Direction::outwards, 2, filled), HasSubstr("too much"));
}

TEST(OffsetCheck, FindsAFalseExtraPiece) {
  const Region source{{rectangle(4, 4), {}}};
  Region result = outset(source, 1).region;
  result.push_back({rectangle(1, 1, {20, 0}), {}});
  EXPECT_THAT(doubt_about(source, Direction::outwards, 1, result), HasSubstr("strays"));
  Region twice = inset(source, 0.3).region;
  twice.push_back(twice.front());
  EXPECT_THAT(doubt_about(source, Direction::inwards, 0.3, twice), HasSubstr("meets itself"));
}

TEST(OffsetCheck, FindsWrongSidesAndSenses) {
  const Region source{{rectangle(4, 4), {}}};
  const Region outside = outset(source, 0.3).region;
  EXPECT_THAT(doubt_about(source, Direction::inwards, 0.3, outside), HasSubstr("wrong side"));
  Region backwards = inset(source, 0.3).region;
  std::reverse(backwards[0].outer.begin(), backwards[0].outer.end());
  EXPECT_THAT(doubt_about(source, Direction::inwards, 0.3, backwards), HasSubstr("wrong way"));
}

TEST(OffsetCheck, EmptyOnlyWhenNoCircleFits) {
  const Region source{{rectangle(4, 0.7), {}}};
  EXPECT_THAT(doubt_about(source, Direction::inwards, 0.3, {}), HasSubstr("a circle fits"));
  EXPECT_THAT(doubt_about(source, Direction::inwards, 0.35, {}), IsEmpty());
  EXPECT_THAT(doubt_about(source, Direction::outwards, 0.3, {}), HasSubstr("nothing"));
}

}  // namespace
}  // namespace drapewright::geometry
