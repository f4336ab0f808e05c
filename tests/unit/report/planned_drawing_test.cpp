// Drawings of true plans: every demo case, and generated outlines.
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <random>

#include "core/casefile/case_json.h"
#include "core/report/plan_drawing.h"
#include "core/report/svg.h"
#include "tests/support/places.h"
#include "tests/unit/report/drawing_checks.h"

namespace drapewright::report {
namespace {

namespace fs = std::filesystem;

TEST(PlannedDrawing, WordsNeverOverlapInDemoCases) {
  int count = 0;
  for (const auto& entry :
       fs::directory_iterator(fs::path(support::project_folder()) / "demo_cases")) {
    if (entry.path().extension() != ".json") continue;
    const wound::Case value = casefile::read_case(entry.path());
    const dressing::Plan plan = dressing::plan_dressing(value);
    const std::string name = entry.path().filename().string();
    expect_readable(draw_plan(value, plan), name);
    expect_readable(draw_plan(value, plan, {.room_mm = DrawingSize{180, 200}}), name + ", small");
    expect_readable(draw_case(value), name + ", unplanned");
    ++count;
  }
  EXPECT_GE(count, 8);
}

/// How often a text occurs among a layer's labels.
int times_written(const Drawing& drawing, LayerKind kind, const std::string& start) {
  const DrawnLayer* layer = find_layer(drawing, kind);
  if (!layer) return 0;
  return static_cast<int>(std::ranges::count_if(
      layer->labels, [&](const Label& label) { return label.text.starts_with(start); }));
}

// A bridge is a piece that has to come off again: none may be missing from the drawing.
TEST(PlannedDrawing, EveryBridgeIsDrawnAndNamed) {
  for (const char* name : {"smaller-than-aperture", "two-wounds-one-film"}) {
    const wound::Case value = casefile::read_case(fs::path(support::project_folder()) /
                                                  "demo_cases" / (std::string(name) + ".json"));
    const dressing::Plan plan = dressing::plan_dressing(value);
    std::size_t bridges = 0;
    for (const dressing::Drape& drape : plan.drapes) bridges += drape.bridges.size();
    EXPECT_GT(bridges, 0U) << name;
    const Drawing drawing = draw_plan(value, plan);
    const DrawnLayer* layer = find_layer(drawing, LayerKind::bridge);
    ASSERT_NE(layer, nullptr) << name;
    EXPECT_GE(layer->areas.size(), bridges) << name;
    EXPECT_NE(find_layer(drawing, LayerKind::skin_protection), nullptr) << name;
    EXPECT_EQ(times_written(drawing, LayerKind::bridge, "bridge "), static_cast<int>(bridges))
        << name;
    EXPECT_TRUE(has_text(drawing, "Bridge of filler")) << name;
    EXPECT_NE(drawing.description.find("of filler over skin"), std::string::npos) << name;
  }
}

/// A lobed outline of the given mean radius, about `centre`.
geometry::Ring lobed(std::mt19937& random, double radius, geometry::Point centre) {
  std::uniform_real_distribution<double> part(0, 1);
  const int lobes = 2 + static_cast<int>(4 * part(random));
  const double depth = 0.1 + 0.5 * part(random), turn = 6.28 * part(random);
  geometry::Ring ring;
  for (int i = 0; i < 90; ++i) {
    const double t = 2 * geometry::pi * i / 90;
    const double r = radius * (1 + depth * std::cos(lobes * t + turn)) / (1 + depth);
    ring.push_back(centre + geometry::Point{r * std::cos(t), r * std::sin(t)});
  }
  return ring;
}

TEST(PlannedDrawing, WordsNeverOverlapInGeneratedCases) {
  std::mt19937 random(19841123);
  std::uniform_real_distribution<double> part(0, 1);
  for (int i = 0; i < 40; ++i) {
    wound::Case value{.label = "generated " + std::to_string(i),
                      .head_direction_deg = 360 * part(random),
                      .assessments = {{.date = "2031-01-01"}}};
    geometry::Point centre;
    const int wounds = 1 + static_cast<int>(2.5 * part(random));
    for (int w = 0; w < wounds; ++w) {
      const double radius = 0.6 + 6 * part(random) * part(random);
      centre = centre + geometry::Point{2 * radius + 1, 3 * part(random)};
      wound::Wound wound{.id = w == 0 ? "A" : "wound no. " + std::to_string(w),
                         .outline_cm = lobed(random, radius, centre),
                         .depth_cm = 4 * part(random)};
      if (part(random) < 0.4)
        wound.undermining = {{.from_clock = 2, .to_clock = 5, .extent_cm = 1}};
      if (part(random) < 0.4) wound.tunnels = {{.clock = 9, .length_cm = 2}};
      value.current().wounds.push_back(wound);
      centre = centre + geometry::Point{radius + 1.5, 0};
    }
    const dressing::Plan plan = dressing::plan_dressing(value);
    expect_readable(draw_plan(value, plan), value.label);
  }
}

TEST(PlannedDrawing, EqualCasesGiveEqualPictures) {
  const fs::path path =
      fs::path(support::project_folder()) / "demo_cases" / "traced-150-points.json";
  const auto svg = [&] {
    const wound::Case value = casefile::read_case(path);
    return to_svg(draw_plan(value, dressing::plan_dressing(value)));
  };
  EXPECT_EQ(svg(), svg());
}

}  // namespace
}  // namespace drapewright::report
