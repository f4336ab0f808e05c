#include "core/dressing/border.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/dressing/border_advice.h"
#include "core/dressing/border_stretches.h"
#include "core/geometry/clock.h"
#include "core/geometry/distance.h"
#include "core/geometry/shapes.h"

namespace drapewright::dressing {
namespace {

// Against a walk along the edge in steps of 0.005 cm.
TEST(BorderLeft, AgreesWithADenseWalk) {
  const geometry::Region wound = {{geometry::ellipse(9, 4, {}, 25, 60), {}}};
  const geometry::Region zones = {{geometry::rectangle(3, 2, {5.5, 4}, 40), {}},
                                  {geometry::circle(1.5, {-6, -3}, 24), {}}};
  const BorderLeft left = border_left(wound, zones, 5, {0, 0}, 90);
  std::array<double, 12> walked;
  walked.fill(5);
  const geometry::EdgeIndex edges(zones);
  const geometry::Ring& ring = wound[0].outer;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const geometry::Point step = ring[(i + 1) % ring.size()] - ring[i];
    const int steps = static_cast<int>(norm(step) / 0.005) + 1;
    for (int k = 0; k < steps; ++k) {
      const geometry::Point p = ring[i] + (static_cast<double>(k) / steps) * step;
      double& hour = walked[static_cast<std::size_t>(geometry::clock_sector({}, p, 90) - 1)];
      hour = std::min(hour, edges.nearest(p).distance_cm);
    }
  }
  for (std::size_t hour = 0; hour < 12; ++hour) {
    EXPECT_NEAR(left.by_clock_cm[hour], walked[hour], 6e-3) << "hour " << hour + 1;
  }
  EXPECT_EQ(left.least_cm, *std::ranges::min_element(left.by_clock_cm));
}

TEST(BorderLeft, IsWholeWithoutZones) {
  const BorderLeft left = border_left({{geometry::circle(4), {}}}, {}, 4, {}, 90);
  EXPECT_EQ(left.least_cm, 4);
  EXPECT_FALSE(left.least_line.has_value());
}

TEST(BorderLeft, TurnsWithTheHead) {
  const geometry::Region wound = {{geometry::circle(4), {}}};
  const geometry::Region zone = {{geometry::circle(2, {5, 0}), {}}};
  EXPECT_NEAR(border_left(wound, zone, 5, {}, 90).by_clock_cm[2], 2, 2e-3);
  EXPECT_NEAR(border_left(wound, zone, 5, {}, 0).by_clock_cm[11], 2, 2e-3);
}

// A 6 x 6 square beside a wall at x = 3 + gap: by hand. The right side is short; of the sides above
// and below, what lies within the bound of the wall.
TEST(BorderStretches, AreWhatTheWallLeaves) {
  const geometry::Region wound = {{geometry::rectangle(6, 6), {}}};
  const geometry::Region wall = {{geometry::rectangle(10, 40, {3 + 2.5 + 5, 0}), {}}};
  const auto stretches = border_stretches(wound, wall, {5, 4, 0.1});
  EXPECT_NEAR(length_of(stretches, BorderKind::too_short), 6 + 2 * 1.5, 1e-9);
  EXPECT_NEAR(length_of(stretches, BorderKind::may_be_short), 2 * 0.1, 1e-9);
  EXPECT_NEAR(length_of(stretches, BorderKind::enough), 24 - 9.2, 1e-9);
  EXPECT_EQ(length_of(stretches, BorderKind::none), 0);
  ASSERT_EQ(stretches.size(), 4u);
  for (const BorderStretch& stretch : stretches) {
    if (stretch.kind != BorderKind::too_short) continue;
    EXPECT_NEAR(stretch.least.value, 2.5, 1e-12);
    EXPECT_NEAR(geometry::distance(stretch.least_line.from, stretch.least_line.to), 2.5, 1e-12);
  }
}

TEST(BorderStretches, AreNoneInsideTheZone) {
  const geometry::Region wound = {{geometry::rectangle(6, 6), {}}};
  const geometry::Region wall = {{geometry::rectangle(10, 40, {7, 0}), {}}};  // from x = 2 on
  const auto stretches = border_stretches(wound, wall, {5, 4, 0.1});
  EXPECT_NEAR(length_of(stretches, BorderKind::none), 6 + 2 * 1, 1e-3);
  EXPECT_NEAR(length_of(stretches, BorderKind::too_short), 2 * 4, 1e-3);
}

TEST(BorderStretches, AreTheWholeRingsWithoutZones) {
  const geometry::Region wound = {{geometry::circle(9), {geometry::circle(2)}}};
  const auto stretches = border_stretches(wound, {}, {5, 4, 0.1});
  ASSERT_EQ(stretches.size(), 2u);
  for (const BorderStretch& stretch : stretches) {
    EXPECT_EQ(stretch.kind, BorderKind::enough);
    EXPECT_EQ(stretch.line.front(), stretch.line.back());
    EXPECT_EQ(stretch.least.value, 5);
  }
}

// 4.02 cm traced to 0.1 cm is not called enough.
TEST(BorderStretches, AreInDoubtWithinTheTracingError) {
  const geometry::Region wound = {{geometry::rectangle(6, 6), {}}};
  const geometry::Region wall = {{geometry::rectangle(10, 40, {3 + 4.02 + 5, 0}), {}}};
  const auto stretches = border_stretches(wound, wall, {5, 4, 0.1});
  EXPECT_NEAR(length_of(stretches, BorderKind::may_be_short), 6 + 2 * 0.08, 1e-9);
  EXPECT_EQ(length_of(stretches, BorderKind::too_short), 0);
}

TEST(BorderLeft, IsNoneRoundAZoneInsideTheWound) {
  const geometry::Region wound = {{geometry::circle(8), {}}};
  const BorderLeft left = border_left(wound, {{geometry::circle(1, {2, 0}), {}}}, 5, {}, 90);
  EXPECT_EQ(left.least_cm, 0);
  EXPECT_EQ(left.by_clock_cm[2], 0);
}

TEST(BorderLeft, IsMeasuredFromTheEdgeOfAnIsland) {
  const geometry::Polygon wound{geometry::circle(8), {geometry::circle(3)}};
  const BorderLeft left = border_left({wound}, {{geometry::circle(1), {}}}, 5, {}, 90);
  EXPECT_NEAR(left.least_cm, 1, 2e-3);
}

// A round obstacle 2 cm across whose near side lies 1 cm from a straight edge: its far side lies
// 3 cm from it.
TEST(BorderAdvice, GoesRoundASmallObstacleAndNotAlongAWall) {
  const geometry::Region wound = {{geometry::rectangle(20, 6, {0, -3}), {}}};
  const geometry::Region obstacle = {{geometry::circle(2, {0, 2}), {}}};
  const BorderLimits limits{5, 4, 0.1};
  int advised = 0;
  for (const BorderStretch& stretch : border_stretches(wound, obstacle, limits)) {
    if (stretch.kind != BorderKind::too_short) continue;
    const BorderAdvice advice = advice_for(stretch, wound, obstacle, 4, 1);
    EXPECT_NEAR(advice.strip_length_cm, stretch.length_cm + 2, 1e-12);
    EXPECT_NEAR(advice.strip_width_cm, 1, 1e-3);
    ASSERT_TRUE(advice.reach_round_cm.has_value());
    EXPECT_NEAR(*advice.reach_round_cm, 3 + 4, 1e-3);
    ++advised;
  }
  EXPECT_EQ(advised, 1);
  const geometry::Region wall = {{geometry::rectangle(60, 2, {0, 2}), {}}};
  for (const BorderStretch& stretch : border_stretches(wound, wall, limits)) {
    if (stretch.kind != BorderKind::too_short) continue;
    EXPECT_FALSE(advice_for(stretch, wound, wall, 4, 1).reach_round_cm.has_value());
  }
}

TEST(BorderAdvice, SparesTheSideThatPointsAway) {
  FilmSheet sheet;
  sheet.place = {.length_cm = 30, .width_cm = 20};
  const geometry::Region film = {{geometry::rectangle(24, 19.5), {}}};
  const auto spare = spare_film(sheet, film, 170);
  ASSERT_TRUE(spare.has_value());
  EXPECT_NEAR(spare->spare_cm, 6, 1e-9);
  EXPECT_NEAR(spare->towards_deg, 180, 1e-9);
  EXPECT_FALSE(spare_film(sheet, {{geometry::rectangle(29.5, 19.5), {}}}, 170).has_value());
}

}  // namespace
}  // namespace drapewright::dressing
