#include "core/dressing/section.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/geometry/clock.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

/// From 9 to 3 o'clock through the middle, from x = -10.
constexpr geometry::Segment across{{-10, 0}, {10, 0}};

Section section_of(const wound::Case& value, const geometry::Segment& line = across) {
  return SectionCutter(value, plan_dressing(value)).cut(line);
}

wound::Case round_wound(double depth_cm, double run_in_cm = 0) {
  wound::Case value = case_of(geometry::circle(6, {}, 720));
  value.current().wounds[0].depth_cm = depth_cm;
  value.current().wounds[0].wall_run_in_cm = run_in_cm;
  return value;
}

double depth_at(const Section::Cavity& cavity, double at_cm) {
  for (std::size_t i = 1; i < cavity.floor.size(); ++i) {
    const geometry::Point a = cavity.floor[i - 1], b = cavity.floor[i];
    if (at_cm < a.x || at_cm > b.x || a.x == b.x) continue;
    return a.y + (b.y - a.y) * (at_cm - a.x) / (b.x - a.x);
  }
  return 0;
}

TEST(Section, OfAStraightCylinderShowsItsSides) {
  const Section section = section_of(round_wound(2));
  ASSERT_EQ(section.cavities.size(), 1u);
  EXPECT_NEAR(section.cavities[0].span.from_cm, 7, 1e-4);
  EXPECT_NEAR(section.cavities[0].span.to_cm, 13, 1e-4);
  EXPECT_NEAR(depth_at(section.cavities[0], 7.01), 2, 1e-9);
  ASSERT_EQ(section.filler.size(), 1u);
  EXPECT_NEAR(section.filler[0].span.length_cm(), 6 - 2 * 0.3, 0.01);
  EXPECT_EQ(section.filler[0].bottom_cm, 2);
  ASSERT_EQ(section.film.size(), 1u);
  ASSERT_EQ(section.borders.size(), 2u);
  for (const auto& side : section.borders) EXPECT_NEAR(side.span.length_cm(), 5, 0.01);
  ASSERT_EQ(section.apertures.size(), 1u);
  EXPECT_NEAR(section.apertures[0].length_cm(), 2, 0.01);
}

// The floor at a place is where the inset by the wall's run-in ends.
TEST(Section, HasTheWallWhereTheInsetsEnd) {
  const wound::Case value = round_wound(3, 1.5);
  const Section section = section_of(value);
  ASSERT_EQ(section.cavities.size(), 1u);
  for (const double depth_cm : {0.5, 1.0, 2.0, 2.9}) {
    const geometry::Region shape{{value.current().wounds[0].outline_cm, {}}};
    const geometry::Offset bed = geometry::inset(shape, 1.5 * depth_cm / 3);
    const auto spans = geometry::spans_inside(across, bed.region);
    ASSERT_EQ(spans.size(), 1u);
    EXPECT_NEAR(depth_at(section.cavities[0], spans[0].from_cm), depth_cm, 0.02);
    EXPECT_NEAR(depth_at(section.cavities[0], spans[0].to_cm), depth_cm, 0.02);
  }
}

TEST(Section, KeepsLayersAboveTheFloor) {
  const Section section = section_of(round_wound(5, 1));
  ASSERT_GE(section.filler.size(), 2u);
  for (const auto& piece : section.filler) {
    EXPECT_GE(depth_at(section.cavities[0], piece.span.from_cm), piece.bottom_cm - 1e-6);
    EXPECT_GE(depth_at(section.cavities[0], piece.span.to_cm), piece.bottom_cm - 1e-6);
  }
}

// Cavalieri: the layer's area is the sum over parallel sections.
TEST(Section, AreasAddUpOverParallelLines) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.current().wounds[0].islands_cm = {geometry::circle(1.5, {1, 0.3})};
  const Plan plan = plan_dressing(value);
  const SectionCutter cutter(value, plan);
  constexpr int lines = 1000;
  double area_cm2 = 0;
  for (int i = 0; i < lines; ++i) {
    const double y = -3 + 6 * (i + 0.5) / lines;
    for (const auto& piece : cutter.cut({{-10, y}, {10, y + 1e-9}}).filler) {
      area_cm2 += piece.span.length_cm() * 6 / lines;
    }
  }
  EXPECT_NEAR(area_cm2, plan.fill.area_cm2, 1e-3 * plan.fill.area_cm2);
}

TEST(Section, ShowsAPocketOutToItsExtent) {
  wound::Case value = round_wound(2);
  value.current().wounds[0].undermining = {{.from_clock = 2, .to_clock = 4, .extent_cm = 2}};
  const Section section = section_of(value);
  ASSERT_EQ(section.pockets.size(), 1u);
  EXPECT_NEAR(section.pockets[0].span.from_cm, 13, 0.01);
  EXPECT_NEAR(section.pockets[0].span.to_cm, 15, 0.01);
  EXPECT_EQ(section.pockets[0].bottom_cm, 2);
  EXPECT_NEAR(section.filler[0].span.to_cm, 15 - 0.3, 0.02) << "reaches in, less the inset";
}

TEST(Section, LeavesIslandsStanding) {
  wound::Case value = round_wound(2);
  value.current().wounds[0].islands_cm = {geometry::circle(1)};
  const Section section = section_of(value);
  ASSERT_EQ(section.cavities.size(), 2u);
  EXPECT_NEAR(section.cavities[1].span.from_cm - section.cavities[0].span.to_cm, 1, 0.01);
}

TEST(Section, ShowsZonesAndWhatTheyTakeFromTheBorder) {
  wound::Case value = round_wound(2);
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_film, .outline_cm = geometry::rectangle(4, 30, {7.5, 0})});
  const Section section = section_of(value);
  ASSERT_EQ(section.no_film.size(), 1u);
  EXPECT_NEAR(section.no_film[0].from_cm, 15.5, 1e-4);
  ASSERT_EQ(section.borders.size(), 2u);
  EXPECT_NEAR(section.borders[1].span.length_cm(), 2.5, 0.01);
}

TEST(Section, SaysWhenNoDepthIsGiven) {
  const Section section = section_of(round_wound(0));
  ASSERT_EQ(section.cavities.size(), 1u);
  EXPECT_FALSE(section.cavities[0].depth_given);
  EXPECT_GT(section.depth_cm, 0) << "as deep as the filler";
}

TEST(Section, MayMissEverything) {
  const wound::Case value = round_wound(2);
  EXPECT_TRUE(section_of(value, {{-50, 40}, {50, 40}}).misses_the_wounds());
  const Section nothing = section_of(value, {{1, 1}, {1, 1}});
  EXPECT_TRUE(nothing.misses_the_wounds());
  EXPECT_EQ(nothing.length_cm, 0);
}

TEST(Section, UsualLineReachesBeyondTheFilm) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  const SectionCutter cutter(value, plan_dressing(value));
  const geometry::Segment& line = cutter.usual_line();
  EXPECT_NEAR(distance(line.from, line.to), 8 + 2 * (5 + 1), 0.05);
  const Section section = cutter.cut(line);
  ASSERT_EQ(section.film.size(), 1u);
  EXPECT_GT(section.film[0].from_cm, 0.9);
  EXPECT_LT(section.film[0].to_cm, section.length_cm - 0.9);
}

TEST(Section, UsualLineLooksIntoTheDeepestPocket) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.current().wounds[0].depth_cm = 2;
  value.current().wounds[0].undermining = {{.from_clock = 11, .to_clock = 1, .extent_cm = 2},
                                           {.from_clock = 4, .to_clock = 5, .extent_cm = 1}};
  const SectionCutter cutter(value, plan_dressing(value));
  const Section section = cutter.cut(cutter.usual_line());
  double widest = 0;
  for (const auto& pocket : section.pockets) widest = std::max(widest, pocket.span.length_cm());
  EXPECT_NEAR(widest, 2, 0.02);
}

}  // namespace
}  // namespace drapewright::dressing
