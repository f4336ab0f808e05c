#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <set>

#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "tests/demo_cases/figures.h"
#include "tests/support/places.h"
#include "tests/support/plan_invariants.h"

namespace drapewright::demo {
namespace {

namespace fs = std::filesystem;

const fs::path folder = fs::path(support::project_folder()) / "demo_cases";

/// Corner points lie on a grid of 1e-5 cm once an outline was tidied.
constexpr double grid_cm = 1e-4;
/// How far a drawn inset or border may lie from the true one, on its safe side, plus the stored
/// figure's own chords.
constexpr double drawn_cm = 0.005 + 0.0005;

class DemoCase : public testing::TestWithParam<Figures> {
 protected:
  const Figures& known() const { return GetParam(); }
  wound::Case value_ = casefile::read_case(folder / (std::string(GetParam().file) + ".json"));
  dressing::Plan plan_ = dressing::plan_dressing(value_);
};

INSTANTIATE_TEST_SUITE_P(Each, DemoCase, testing::ValuesIn(figures()), [](const auto& row) {
  std::string name = row.param.file;
  std::ranges::replace(name, '-', '_');
  return name;
});

TEST_P(DemoCase, MeasuresAsKnown) {
  ASSERT_EQ(plan_.wounds.size(), known().area_cm2.size());
  for (std::size_t i = 0; i < plan_.wounds.size(); ++i) {
    const dressing::WoundMeasures& wound = plan_.wounds[i];
    EXPECT_NEAR(wound.area.value, known().area_cm2[i], grid_cm * known().edge_cm[i]);
    EXPECT_NEAR(wound.perimeter.value, known().edge_cm[i], 1e-3);
    EXPECT_NEAR(wound.length.value, known().length_cm[i], grid_cm);
    EXPECT_NEAR(wound.width.value, known().width_cm[i], 1e-3);
    EXPECT_NEAR(wound.volume.value, known().volume_cm3[i], 0.002 * known().volume_cm3[i]);
  }
}

// Filler never reaches beyond the true inset, and falls short of it by no more than drawing allows.
TEST_P(DemoCase, FillsAsKnown) {
  EXPECT_EQ(plan_.fill.piece_count, known().pieces);
  EXPECT_LE(plan_.fill.area_cm2, known().filler_cm2 + 1e-3);
  EXPECT_GE(plan_.fill.area_cm2, known().filler_cm2 - drawn_cm * known().filler_edge_cm);
  EXPECT_NEAR(plan_.fill.unfilled_cm2, known().unfilled_cm2, drawn_cm * known().filler_edge_cm);
}

// Film is never less than the true border, and more by no more than drawing allows.
TEST_P(DemoCase, DrapesAsKnown) {
  ASSERT_EQ(plan_.drapes.size(), 1u);
  const dressing::Drape& drape = plan_.drapes.front();
  EXPECT_EQ(drape.wounds.size(), known().area_cm2.size());
  EXPECT_GE(drape.area_cm2, known().film_cm2 - 1e-3);
  EXPECT_LE(drape.area_cm2, known().film_cm2 + drawn_cm * known().film_edge_cm);
  EXPECT_NEAR(drape.least_border.value, known().least_border_cm, 1e-3);
  std::vector<std::string> sheets;
  for (const dressing::FilmSheet& sheet : drape.sheets) sheets.push_back(sheet.item);
  EXPECT_EQ(sheets, known().sheets);
}

TEST_P(DemoCase, OpensNoMoreFillerThanItMust) {
  EXPECT_EQ(plan_.cut_layout.size(), known().filler_sheets);
}

// The drawn filler is smaller all round by what drawing allows; so is the circle in it.
TEST_P(DemoCase, PlacesThePortAsKnown) {
  const dressing::Port& port = plan_.drapes.at(0).port;
  EXPECT_LE(port.largest_aperture.value, known().largest_aperture_cm + 1e-3);
  EXPECT_GE(port.largest_aperture.value, known().largest_aperture_cm - 2 * (drawn_cm + 1e-3));
  EXPECT_EQ(port.fits, known().port_fits);
}

TEST_P(DemoCase, FindsWhatIsKnown) {
  std::vector<std::string> codes;
  for (const dressing::Finding& finding : plan_.findings) codes.push_back(finding.code);
  EXPECT_THAT(codes, testing::UnorderedElementsAreArray(known().findings));
}

TEST_P(DemoCase, KeepsWhatEveryPlanMust) {
  EXPECT_THAT(support::broken_promises(value_, plan_), testing::IsEmpty());
}

TEST_P(DemoCase, IsTheSameAfterWritingAndReading) {
  const std::string text = casefile::case_to_json(value_);
  const wound::Case again = casefile::case_from_json(text);
  EXPECT_EQ(again, value_);
  EXPECT_EQ(casefile::case_to_json(again), text);
}

TEST(DemoCases, AreAllKnown) {
  std::set<std::string> files, known;
  for (const auto& entry : fs::directory_iterator(folder)) {
    if (entry.path().extension() == ".json") files.insert(entry.path().stem().string());
  }
  for (const Figures& row : figures()) known.insert(row.file);
  EXPECT_EQ(files, known);
  EXPECT_GE(known.size(), 9u);
}

}  // namespace
}  // namespace drapewright::demo
