#include "core/report/plan_drawing.h"

#include <gtest/gtest.h>

#include <random>

#include "core/geometry/measures.h"
#include "tests/support/sample_plan.h"
#include "tests/unit/report/drawing_checks.h"

namespace drapewright::report {
namespace {

using support::SamplePlan;

Drawing draw(const SamplePlan& sample, const DrawingOptions& options = {}) {
  return draw_plan(sample.value, sample.plan, options);
}

TEST(PlanDrawing, ShowsEveryLayerOfACrowdedPlan) {
  const Drawing drawing = draw(support::crowded_plan());
  for (const LayerStyle& style : layer_styles()) {
    if (style.kind == LayerKind::skin) continue;           // of sections
    if (style.kind == LayerKind::finding_place) continue;  // shown on screen only
    EXPECT_NE(find_layer(drawing, style.kind), nullptr) << style.id;
  }
  for (const char* text :
       {"wound left hip", "wound B", "B 1.1", "skin", "border 2.37 cm", "length 8.0 cm",
        "width 2.0 cm", "no film: skin fold at the groin", "no port: bony point", "port",
        "undermined 1.5 cm", "tunnel 3.0 cm, not explored", "no filler: 0.2 cm\u00b2", "head",
        "bridge 4.1 cm", "Bridge of filler", "Film under a bridge", "Seam of sheets or filler"}) {
    EXPECT_TRUE(has_text(drawing, text)) << text;
  }
  EXPECT_TRUE(has_text(drawing, "left hip 1.1, 2.1, 3.1"));
}

TEST(PlanDrawing, AWholeBorderHasNoBand) {
  SamplePlan sample = support::crowded_plan();
  for (auto& stretch : sample.plan.drapes[0].border_stretches) {
    stretch.kind = dressing::BorderKind::enough;
  }
  EXPECT_EQ(find_layer(draw(sample), LayerKind::border_enough), nullptr);
}

TEST(PlanDrawing, AStripLiesInItsTunnelWithItsTailInTheWound) {
  SamplePlan sample = support::sample_plan();
  wound::Wound& wound = sample.value.assessments.back().wounds[0];
  wound.tunnels = {{.clock = 3, .length_cm = 4, .explored = true}};
  const Drawing without = draw(sample, {.mm_per_cm = 10});
  sample.plan.fill.strips = {{.wound = wound.id, .clock = 3, .length_cm = 6, .width_cm = 1}};
  const Drawing with = draw(sample, {.mm_per_cm = 10});
  const DrawnLayer* strips = find_layer(with, LayerKind::deeper_filler);
  ASSERT_NE(strips, nullptr);
  const auto& strip = strips->areas.back().region.front().outer;
  EXPECT_NEAR(geometry::area(strip), 600, 1e-6);
}

TEST(PlanDrawing, AShortBorderNeverReadsAsEnough) {
  EXPECT_EQ(border_in_words(3.999), "3.99 cm");
  EXPECT_EQ(border_in_words(4), "4 cm");
  EXPECT_EQ(border_in_words(0), "0 cm");
}

TEST(PlanDrawing, WithoutTrimmingNoBorderIsDimensioned) {
  const Drawing drawing = draw(support::sample_plan());
  for (const Label& label : find_layer(drawing, LayerKind::measures)->labels) {
    EXPECT_EQ(label.text.find("border"), std::string::npos) << label.text;
  }
}

TEST(PlanDrawing, LifeSizeIsExact) {
  const SamplePlan sample = support::sample_plan(8, 5, 30);
  const Drawing drawing = draw(sample, {.mm_per_cm = 10});
  EXPECT_DOUBLE_EQ(drawing.scale, 1);
  const auto& wound = find_layer(drawing, LayerKind::wound)->areas.front().region.front().outer;
  const auto& outline = sample.value.current().wounds[0].outline_cm;
  EXPECT_NEAR(geometry::area(wound), 100 * geometry::area(outline), 1e-6);
  EXPECT_NEAR(geometry::edge_length(wound), 10 * geometry::edge_length(outline), 1e-6);
  EXPECT_TRUE(has_text(drawing, "Scale 1:1 (life size)"));
}

TEST(PlanDrawing, UpIsUp) {
  const Drawing drawing = draw(support::crowded_plan());
  const auto at = [&](const std::string& text) {
    for (const DrawnLayer& layer : drawing.layers) {
      for (const Label& label : layer.labels) {
        if (label.text == text) return label.at;
      }
    }
    ADD_FAILURE() << text;
    return geometry::Point{};
  };
  EXPECT_GT(at("no film: skin fold at the groin").y, at("skin").y);  // y of paper points down
  EXPECT_GT(at("wound B").x, at("wound left hip").x);
}

TEST(PlanDrawing, FitsTheRoomAtARoundScale) {
  for (const auto& sample : {support::sample_plan(1, 0.7), support::sample_plan(),
                             support::sample_plan(40, 30), support::crowded_plan()}) {
    for (const DrawingSize room : {DrawingSize{190, 270}, DrawingSize{270, 190},
                                   DrawingSize{190, 150}, DrawingSize{400, 400}}) {
      const Drawing drawing = draw(sample, {.room_mm = room});
      EXPECT_LE(drawing.width_mm, room.width_mm);
      EXPECT_LE(drawing.height_mm, room.height_mm);
      const double reduction = 1 / drawing.scale;
      EXPECT_NEAR(2 * reduction, std::round(2 * reduction), 1e-9) << "1:" << reduction;
      EXPECT_LE(drawing.scale, 1);
      expect_readable(drawing, "room");
    }
  }
}

TEST(PlanDrawing, PrefersLifeSize) {
  EXPECT_DOUBLE_EQ(draw(support::sample_plan(1, 0.7, 0)).scale, 1);
  EXPECT_DOUBLE_EQ(draw(support::crowded_plan(), {.room_mm = DrawingSize{600, 600}}).scale, 1);
}

TEST(PlanDrawing, RefusesSizesThatAreNone) {
  const SamplePlan sample = support::sample_plan();
  EXPECT_THROW(draw(sample, {.room_mm = DrawingSize{0, 100}}), std::invalid_argument);
  EXPECT_THROW(draw(sample, {.room_mm = DrawingSize{40, 40}}), std::invalid_argument);
  EXPECT_THROW(draw(sample, {.text_mm = -1}), std::invalid_argument);
  EXPECT_THROW(draw(sample, {.mm_per_cm = std::nan("")}), std::invalid_argument);
}

TEST(PlanDrawing, NamesNeverOverlapOnOddPlans) {
  std::mt19937 random(20310301);
  std::uniform_real_distribution<double> length(0.8, 45), ratio(0.15, 1), angle(0, 180);
  for (int i = 0; i < 60; ++i) {
    const double l = length(random);
    SamplePlan sample = support::sample_plan(l, l * ratio(random), angle(random));
    sample.value.head_direction_deg = 2 * angle(random);
    expect_readable(draw(sample), "sample " + std::to_string(i));
  }
  expect_readable(draw(support::crowded_plan()), "crowded");
  expect_readable(draw(support::crowded_plan(), {.text_mm = 4.5}), "crowded, large print");
}

TEST(PlanDrawing, ALongHeadingIsCutToTheSheet) {
  SamplePlan sample = support::sample_plan(2, 1);
  sample.value.label = std::string(70, 'W') + "\u00e9\u00e9\u00e9\u00e9";
  expect_readable(draw(sample), "long heading");
}

TEST(PlanDrawing, AnApertureThatDoesNotFitSaysSo) {
  EXPECT_TRUE(has_text(draw(support::sample_plan(3, 1)), "aperture does not fit here"));
  EXPECT_FALSE(has_text(draw(support::sample_plan(3, 1)), "port"));
}

TEST(PlanDrawing, ACaseAloneIsDrawnWithoutAPlan) {
  const Drawing drawing = draw_case(support::crowded_plan().value);
  EXPECT_NE(find_layer(drawing, LayerKind::wound), nullptr);
  EXPECT_EQ(find_layer(drawing, LayerKind::filler), nullptr);
  EXPECT_NE(drawing.description.find("not planned yet"), std::string::npos);
  expect_readable(drawing, "case alone");
}

}  // namespace
}  // namespace drapewright::report
