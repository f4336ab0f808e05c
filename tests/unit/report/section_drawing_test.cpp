// Sections of true plans: to scale both ways, and every word readable.
#include "core/report/section_drawing.h"

#include <gtest/gtest.h>

#include <filesystem>

#include "core/casefile/case_json.h"
#include "tests/support/places.h"
#include "tests/unit/report/drawing_checks.h"

namespace drapewright::report {
namespace {

namespace fs = std::filesystem;

struct Planned {
  explicit Planned(const fs::path& file)
      : value(casefile::read_case(file)),
        plan(dressing::plan_dressing(value)),
        cutter(value, plan) {}
  Drawing draw(const geometry::Segment& line, const DrawingOptions& options = {}) const {
    return draw_section(cutter.cut(line), value.label, value.dressing.border_cm, {options});
  }

  wound::Case value;
  dressing::Plan plan;
  dressing::SectionCutter cutter;
};

fs::path demo(const std::string& name) {
  return fs::path(support::project_folder()) / "demo_cases" / (name + ".json");
}

TEST(SectionDrawing, WordsNeverOverlapInDemoCases) {
  int count = 0;
  for (const auto& entry : fs::directory_iterator(demo("").parent_path())) {
    if (entry.path().extension() != ".json") continue;
    const Planned planned(entry.path());
    const geometry::Segment& line = planned.cutter.usual_line();
    const std::string name = entry.path().filename().string();
    expect_readable(planned.draw(line), name);
    expect_readable(planned.draw(line, {.room_mm = DrawingSize{120, 90}, .text_mm = 2.5}),
                    name + ", small");
    const geometry::Point middle = 0.5 * (line.from + line.to);
    const geometry::Point across{line.from.y - middle.y, middle.x - line.from.x};
    expect_readable(planned.draw({middle - across, middle + across}), name + ", across");
    ++count;
  }
  EXPECT_GE(count, 8);
}

/// Greatest extent of a layer's areas in mm.
geometry::Box extent_of(const Drawing& drawing, LayerKind kind) {
  std::vector<geometry::Point> points;
  for (const Area& area : find_layer(drawing, kind)->areas) {
    for (const auto& polygon : area.region) {
      points.insert(points.end(), polygon.outer.begin(), polygon.outer.end());
    }
  }
  return geometry::bounding_box(points);
}

TEST(SectionDrawing, IsToTheSameScaleBothWays) {
  const Planned planned(demo("deep-sloping-wall"));
  const auto section = planned.cutter.cut(planned.cutter.usual_line());
  for (const double mm_per_cm : {10.0, 5.0, 3.3}) {
    const Drawing drawing = planned.draw(section.line, {.mm_per_cm = mm_per_cm});
    const geometry::Box wound = extent_of(drawing, LayerKind::wound);
    EXPECT_NEAR(wound.width(), mm_per_cm * section.cavities[0].span.length_cm(), 1e-6);
    EXPECT_NEAR(wound.height(), mm_per_cm * section.cavities[0].depth_cm, 1e-6);
    EXPECT_NEAR(drawing.scale, mm_per_cm / 10, 1e-12);
  }
}

TEST(SectionDrawing, FitsTheRoomThatItIsGiven) {
  const Planned planned(demo("larger-than-any-sheet"));
  for (const DrawingSize room : {DrawingSize{190, 130}, DrawingSize{150, 100}}) {
    const Drawing drawing = planned.draw(planned.cutter.usual_line(), {.room_mm = room});
    EXPECT_LE(drawing.width_mm, room.width_mm + 1e-6);
  }
}

TEST(SectionDrawing, SaysThatItMissesTheWounds) {
  const Planned planned(demo("plain-heel"));
  const Drawing drawing = planned.draw({{-90, 90}, {90, 90}});
  EXPECT_TRUE(has_text(drawing, "No wound lies on this line."));
  EXPECT_THROW(planned.draw({{1, 1}, {1, 1}}), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::report
