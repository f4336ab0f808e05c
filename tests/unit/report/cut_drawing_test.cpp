#include "core/report/cut_drawing.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::report {
namespace {

wound::Case many_layers() {
  wound::Case value{.label = "cut"};
  value.assessments.push_back({.date = "2026-01-01"});
  value.current().wounds.push_back(
      {.id = "A", .outline_cm = geometry::ellipse(9, 6), .depth_cm = 4.5});
  return value;
}

const DrawnLayer* layer_of(const Drawing& drawing, LayerKind kind) {
  const auto found = std::ranges::find(drawing.layers, kind, &DrawnLayer::kind);
  return found == drawing.layers.end() ? nullptr : &*found;
}

std::string all_words(const Drawing& drawing) {
  std::string words;
  for (const DrawnLayer& layer : drawing.layers) {
    for (const Label& label : layer.labels) words += label.text + " ";
  }
  return words;
}

TEST(CutDrawing, ShowsEveryPieceByName) {
  const dressing::Plan plan = dressing::plan_dressing(many_layers());
  const Drawing drawing = draw_cut(plan);
  const DrawnLayer* pieces = layer_of(drawing, LayerKind::filler);
  ASSERT_NE(pieces, nullptr);
  EXPECT_EQ(static_cast<int>(pieces->areas.size()), plan.fill.piece_count);
  for (const char* name : {"1.1", "2.1", "Sheet 1: "}) {
    EXPECT_NE(all_words(drawing).find(name), std::string::npos) << name;
  }
}

TEST(CutDrawing, IsExactAtLifeSize) {
  const dressing::Plan plan = dressing::plan_dressing(many_layers());
  const Drawing drawing = draw_cut(plan, {.mm_per_cm = 10});
  EXPECT_EQ(drawing.scale, 1);
  double drawn_mm2 = 0;
  for (const Area& area : layer_of(drawing, LayerKind::filler)->areas) {
    drawn_mm2 += geometry::area(area.region);
  }
  EXPECT_NEAR(drawn_mm2, 100 * plan.fill.area_cm2, 0.01);
  EXPECT_NE(all_words(drawing).find("1:1 (life size)"), std::string::npos);
}

TEST(CutDrawing, KeepsToItsRoom) {
  const Drawing drawing =
      draw_cut(dressing::plan_dressing(many_layers()), {.width_mm = 150, .height_mm = 120});
  EXPECT_LE(drawing.width_mm, 150);
  EXPECT_LE(drawing.height_mm, 120);
  for (const DrawnLayer& layer : drawing.layers) {
    for (const Area& area : layer.areas) {
      const geometry::Box box = geometry::bounding_box(area.region.at(0).outer);
      EXPECT_TRUE(box.low.x >= 0 && box.high.x <= 150 && box.low.y >= 0 && box.high.y <= 120);
    }
  }
}

TEST(CutDrawing, SaysThatAnOffCutIsForLocalPolicy) {
  wound::Case value = many_layers();
  value.current().wounds[0] = {.id = "A", .outline_cm = geometry::ellipse(6, 3), .depth_cm = 1.5};
  const dressing::Plan plan = dressing::plan_dressing(value);
  ASSERT_TRUE(plan.cut_layout.at(0).off_cut.has_value());
  const Drawing drawing = draw_cut(plan);
  EXPECT_NE(all_words(drawing).find("local policy"), std::string::npos);
}

TEST(CutDrawing, ShowsTheSeamOnBothParts) {
  wound::Case value = many_layers();
  value.current().wounds[0] = {
      .id = "A", .outline_cm = geometry::rectangle(35, 3), .depth_cm = 1.5};
  const dressing::Plan plan = dressing::plan_dressing(value);
  ASSERT_EQ(plan.fill.seams.size(), 1U);
  const Drawing drawing = draw_cut(plan);
  const DrawnLayer* seams = layer_of(drawing, LayerKind::seam);
  ASSERT_NE(seams, nullptr);
  EXPECT_EQ(seams->strokes.size(), 2U);
}

TEST(CutDrawing, SaysWhereThereIsNothingToCut) {
  wound::Case value = many_layers();
  value.supplies.emplace();
  const Drawing drawing = draw_cut(dressing::plan_dressing(value));
  EXPECT_NE(all_words(drawing).find("No filler sheet is cut"), std::string::npos);
  EXPECT_GT(drawing.height_mm, 0);
}

}  // namespace
}  // namespace drapewright::report
