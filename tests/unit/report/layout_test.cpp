// The smaller parts that a drawing is laid out with.
#include <gtest/gtest.h>

#include <cmath>

#include "core/geometry/clock.h"
#include "core/geometry/distance.h"
#include "core/geometry/shapes.h"
#include "core/report/inner_point.h"
#include "core/report/label_placer.h"
#include "core/report/rose.h"
#include "core/report/rulers.h"
#include "core/report/text_size.h"
#include "core/report/undermining_sketch.h"

namespace drapewright::report {
namespace {

using geometry::Box;
using geometry::Point;

TEST(TextSize, GrowsWithTextAndIsNeverNarrowForOtherScripts) {
  EXPECT_NEAR(text_width_mm("0123456789", 10), 63.7, 1e-9);
  EXPECT_GT(text_width_mm("wound A", 3, true), text_width_mm("wound A", 3));
  EXPECT_GT(text_width_mm("\u4e2d\u6587", 10), 20);
  EXPECT_DOUBLE_EQ(text_width_mm("", 3), 0);
}

TEST(TextSize, TextIsCutBetweenCharacters) {
  EXPECT_EQ(shortened("short", 10), "short");
  EXPECT_EQ(shortened("ab\u00e9\u00e9", 3), "ab\u2026");
  EXPECT_EQ(shortened("ab\u00e9\u00e9", 4), "ab\u00e9\u2026");
}

TEST(LabelPlacer, KeepsApartAndInside) {
  LabelPlacer placer(Box{{0, 0}, {60, 40}});
  std::vector<Box> placed;
  for (int i = 0; i < 12; ++i) {
    const auto box =
        placer.place({30, 20}, 12, 4, i == 0 ? Caption::Where::on : Caption::Where::beside);
    ASSERT_TRUE(box) << i;
    for (const Box& other : placed) {
      EXPECT_TRUE(box->low.x >= other.high.x || other.low.x >= box->high.x ||
                  box->low.y >= other.high.y || other.low.y >= box->high.y);
    }
    EXPECT_GE(box->low.x, 0);
    EXPECT_LE(box->high.y, 40);
    placed.push_back(*box);
  }
}

TEST(LabelPlacer, PrefersPlacesOffTheLines) {
  LabelPlacer placer(Box{{0, 0}, {100, 100}});
  placer.avoid({{50, 50}, {100, 50}});  // to the right, where it would look first
  const auto box = placer.place({50, 50}, 20, 4, Caption::Where::beside);
  ASSERT_TRUE(box);
  EXPECT_EQ(placer.lines_under(*box), 0);
}

TEST(LabelPlacer, SaysWhenThereIsNoRoom) {
  LabelPlacer placer(Box{{0, 0}, {10, 10}});
  EXPECT_FALSE(placer.place({5, 5}, 20, 4, Caption::Where::on));
}

TEST(Rulers, StepsKeepTheirDistance) {
  for (double mm_per_cm = 0.4; mm_per_cm < 500; mm_per_cm *= 1.1) {
    const RulerSteps steps = ruler_steps(mm_per_cm);
    EXPECT_GE(steps.fine_cm * mm_per_cm, 1.9);
    EXPECT_GE(steps.label_cm * mm_per_cm, 10);
    EXPECT_GE(steps.coarse_cm, 2 * steps.fine_cm);
  }
  EXPECT_DOUBLE_EQ(ruler_steps(10).fine_cm, 1);  // life size: cm
  EXPECT_DOUBLE_EQ(ruler_steps(10).label_cm, 1);
  EXPECT_DOUBLE_EQ(ruler_steps(30).fine_cm, 0.1);  // zoomed in: mm
}

TEST(Rulers, FiguresStandAtTheirPlace) {
  const ScaleMap map{10, {100, 100}};
  const DrawnLayer rulers = draw_rulers(map, Box{{20, 20}, {200, 150}}, 8, 3);
  int across = 0;
  for (const Label& label : rulers.labels) {
    if (label.text == "cm" || label.anchor != Label::Anchor::middle) continue;
    EXPECT_NEAR(label.at.x, map.to_mm({std::stod(label.text), 0}).x, 1e-9);
    ++across;
  }
  EXPECT_EQ(across, 17);  // -7 to 9; -8 and 10 would reach over the ends
}

TEST(InnerPoint, LiesInsideAndOutsideTheHoles) {
  const geometry::Polygon ring{geometry::circle(10), {geometry::circle(7)}};
  EXPECT_TRUE(geometry::contains(ring, inner_point(ring)));
  const geometry::Polygon u{{{0, 0}, {9, 0}, {9, 9}, {8, 9}, {8, 1}, {1, 1}, {1, 9}, {0, 9}}, {}};
  EXPECT_TRUE(geometry::contains(u, inner_point(u)));
  const geometry::Polygon plain{geometry::ellipse(8, 5), {}};
  EXPECT_NEAR(geometry::distance(inner_point(plain), {0, 0}), 0, 0.1);
}

TEST(UnderminingSketch, ThePocketKeepsItsExtentFromTheEdge) {
  const geometry::Ring outline = geometry::ellipse(10, 4, {}, 20);
  const UnderminingSketch sketch(outline, {}, 90);
  const auto pocket = sketch.pocket({.from_clock = 11, .to_clock = 2, .extent_cm = 1.5});
  const geometry::EdgeIndex edges(geometry::Region{{outline, {}}});
  const std::size_t half = pocket.outer.size() / 2;
  for (std::size_t i = 0; i < half; ++i) {
    const Point p = pocket.outer[i];
    EXPECT_NEAR(edges.nearest(p).distance_cm, 1.5, 0.01);
    const double hour = geometry::clock_hour({}, p, 90);
    EXPECT_TRUE(hour >= 11 - 1e-9 || hour <= 2 + 1e-9) << hour;
    EXPECT_NEAR(edges.nearest(pocket.outer[half + i]).distance_cm, 0, 0.01);
  }
}

TEST(UnderminingSketch, ATunnelStartsAtTheEdgeAndHasItsLength) {
  const geometry::Ring outline = geometry::circle(6);
  const auto way = UnderminingSketch(outline, {}, 90).tunnel({.clock = 3, .length_cm = 2.5});
  EXPECT_NEAR(way.from.x, 3, 0.01);
  EXPECT_NEAR(way.to.x, 5.5, 0.01);
  EXPECT_NEAR(way.to.y, 0, 0.01);
}

TEST(Rose, TwelvePointsToTheHead) {
  for (const double head : {90.0, 0.0, 200.0}) {
    const DrawnLayer rose = draw_rose({50, 50}, 12, head, 3);
    ASSERT_EQ(rose.labels.size(), 13U);
    const Label& twelve = rose.labels[11];
    EXPECT_EQ(twelve.text, "12");
    const Point way{twelve.at.x - 50, 50 - (twelve.at.y - 0.36 * 3)};  // y up, from the middle
    EXPECT_NEAR(geometry::direction_deg({}, way), head, 1e-6);
    const Box reach{{50 - rose_reach_mm(12, 3), 50 - rose_reach_mm(12, 3)},
                    {50 + rose_reach_mm(12, 3), 50 + rose_reach_mm(12, 3)}};
    for (const Label& label : rose.labels) {
      EXPECT_GE(label_box(label).low.x, reach.low.x);
      EXPECT_LE(label_box(label).high.y, reach.high.y);
    }
  }
}

}  // namespace
}  // namespace drapewright::report
