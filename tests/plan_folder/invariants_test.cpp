#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <functional>

#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "core/geometry/shapes.h"
#include "tests/support/places.h"
#include "tests/support/plan_invariants.h"

// An auditor that never objects is worth nothing: sound plans are spoilt in one place each, and
// each time the auditor must say so.
namespace drapewright::support {
namespace {

using dressing::Plan;
using testing::Contains;
using testing::IsEmpty;
using testing::Not;

wound::Case read(const std::string& name) {
  return casefile::read_case(support::project_folder() + "/demo_cases/" + name + ".json");
}

void expect_objection(const std::string& name, const std::function<void(Plan&)>& spoil) {
  const wound::Case value = read(name);
  Plan plan = dressing::plan_dressing(value);
  ASSERT_THAT(broken_promises(value, plan), IsEmpty());
  spoil(plan);
  EXPECT_THAT(broken_promises(value, plan), Not(IsEmpty()));
}

void forget_findings(Plan& plan) { plan.findings.clear(); }

TEST(PlanInvariants, ObjectToFillerTooNearTheEdge) {
  expect_objection("plain-heel", [](Plan& plan) {
    auto& pieces = plan.fill.layers.front().pieces;
    pieces = geometry::moved(pieces, {0.01, 0});
  });
}

TEST(PlanInvariants, ObjectToFillerOnAnIsland) {
  expect_objection("island-of-skin",
                   [](Plan& plan) { plan.fill.layers.front().pieces.front().holes.clear(); });
}

TEST(PlanInvariants, ObjectToALayerCutAsIfTheWallWereStraight) {
  expect_objection("deep-sloping-wall",
                   [](Plan& plan) { plan.fill.layers[2].pieces = plan.fill.layers[1].pieces; });
}

TEST(PlanInvariants, ObjectToPiecesThatDoNotAddUp) {
  expect_objection("deep-sloping-wall", [](Plan& plan) { plan.fill.piece_count = 2; });
  expect_objection("deep-sloping-wall", [](Plan& plan) { plan.fill.layers.pop_back(); });
}

TEST(PlanInvariants, ObjectToAFigureThatIsOff) {
  expect_objection("plain-heel", [](Plan& plan) { plan.wounds.front().area.value *= 1.001; });
  expect_objection("plain-heel", [](Plan& plan) { plan.wounds.front().length.value -= 0.01; });
  expect_objection("narrow-arm", [](Plan& plan) { plan.fill.unfilled_cm2 = 0; });
}

TEST(PlanInvariants, ObjectToFilmThatIsTooNarrow) {
  expect_objection("plain-heel", [](Plan& plan) {
    auto& film = plan.drapes.front().required_outline_cm;
    film = geometry::moved(film, {0, 0.01});
  });
}

TEST(PlanInvariants, ObjectToFilmWhereNoneMayLie) {
  expect_objection("film-cut-short", [](Plan& plan) {
    plan.drapes.front().outline_cm = plan.drapes.front().required_outline_cm;
  });
}

TEST(PlanInvariants, ObjectToASheetThatIsTooSmall) {
  expect_objection("plain-heel",
                   [](Plan& plan) { plan.drapes.front().sheets.front().place.length_cm -= 1; });
}

TEST(PlanInvariants, ObjectToSheetsThatOverlapTooLittle) {
  wound::Case value = read("larger-than-any-sheet");
  const Plan plan = dressing::plan_dressing(value);
  EXPECT_THAT(broken_promises(value, plan), IsEmpty());
  value.dressing.film_overlap_cm = 8;  // the plan was made for 1 cm
  EXPECT_THAT(broken_promises(value, plan), Contains("film sheets overlap too little"));
}

TEST(PlanInvariants, ObjectToAPortOffTheFiller) {
  expect_objection("plain-heel", [](Plan& plan) { plan.drapes.front().port.centre_cm->x += 0.1; });
  expect_objection("smaller-than-aperture",
                   [](Plan& plan) { plan.drapes.front().port.fits = false; });
}

TEST(PlanInvariants, ObjectToAWoundUnderNoFilm) {
  expect_objection("two-wounds-one-film",
                   [](Plan& plan) { plan.drapes.front().wounds.pop_back(); });
}

TEST(PlanInvariants, ObjectToSilence) {
  expect_objection("film-cut-short", forget_findings);
  expect_objection("smaller-than-aperture", forget_findings);
  expect_objection("larger-than-any-sheet", forget_findings);
}

TEST(PlanInvariants, ObjectToAFindingWithoutASource) {
  expect_objection("narrow-arm", [](Plan& plan) { plan.findings.front().source.clear(); });
  expect_objection("larger-than-any-sheet",
                   [](Plan& plan) { std::ranges::reverse(plan.findings); });
}

}  // namespace
}  // namespace drapewright::support
