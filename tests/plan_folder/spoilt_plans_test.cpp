// Plans of made cases that are spoilt in one place each: the auditor must name just that fault.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"
#include "tests/support/plan_invariants.h"
#include "tests/support/plan_relations.h"
#include "tests/support/plan_texts.h"

namespace drapewright::support {
namespace {

using dressing::Plan;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

wound::Case case_of(geometry::Ring outline) {
  wound::Case value{.label = "spoilt"};
  value.cautions.reviewed = true;
  value.assessments.push_back({.date = "2026-01-01"});
  value.current().wounds.push_back({.id = "A", .outline_cm = std::move(outline), .depth_cm = 1});
  return value;
}

/// So small that the port sits on a bridge.
wound::Case small_case() { return case_of(geometry::circle(2)); }

wound::Case undermined_case() {
  wound::Case value = case_of(geometry::circle(6));
  value.current().wounds[0].undermining = {{.from_clock = 12, .to_clock = 12, .extent_cm = 5}};
  return value;
}

wound::Case tunnelled_case(bool explored) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().wounds[0].tunnels = {{.clock = 3, .length_cm = 4, .explored = explored}};
  return value;
}

wound::Case pair_case() {
  wound::Case value = case_of(geometry::circle(5));
  value.current().wounds.push_back(
      {.id = "B", .outline_cm = geometry::circle(5, {8, 0}), .depth_cm = 1});
  return value;
}

void expect_refused(const wound::Case& value, const std::function<void(Plan&)>& spoil,
                    const std::string& sentence) {
  Plan plan = dressing::plan_dressing(value);
  ASSERT_THAT(broken_promises(value, plan), IsEmpty());
  spoil(plan);
  EXPECT_THAT(broken_promises(value, plan), Contains(HasSubstr(sentence)));
}

void forget(Plan& plan, const std::string& code) {
  std::erase_if(plan.findings, [&](const auto& finding) { return finding.code == code; });
}

TEST(SpoiltFill, ObjectsToFillerOnSkin) {
  expect_refused(
      case_of(geometry::circle(6)),
      [](Plan& plan) {
        auto& pieces = plan.fill.layers[0].pieces;
        pieces = geometry::moved(pieces, {1, 0});
      },
      "lies on skin");
}

TEST(SpoiltFill, ObjectsToPiecesOverEachOther) {
  expect_refused(
      case_of(geometry::circle(6)),
      [](Plan& plan) { plan.fill.layers[0].pieces.push_back(plan.fill.layers[0].pieces[0]); },
      "no valid shape");
}

TEST(SpoiltFill, ObjectsToAPieceLeftOut) {
  expect_refused(
      case_of({{0, 0},
               {3, 0},
               {3, 1.3},
               {5, 1.3},
               {5, 0},
               {8, 0},
               {8, 3},
               {5, 3},
               {5, 1.7},
               {3, 1.7},
               {3, 3},
               {0, 3}}),
      [](Plan& plan) { plan.fill.layers[0].pieces.pop_back(); }, "leaves out");
}

TEST(SpoiltFill, ObjectsToAWrongCount) {
  expect_refused(
      case_of(geometry::circle(6)), [](Plan& plan) { ++plan.fill.piece_count; },
      "the pieces do not add up");
}

TEST(SpoiltFill, ObjectsToAPocketPieceThatCannotPass) {
  expect_refused(
      undermined_case(), [](Plan& plan) { forget(plan, "piece-wider-than-opening"); },
      "pieces wider than the opening");
}

TEST(SpoiltFill, ObjectsToAPieceBeyondItsPocket) {
  expect_refused(
      undermined_case(),
      [](Plan& plan) {
        auto& pieces = plan.fill.layers[0].pieces;
        pieces = geometry::outset(pieces, 0.1).region;
      },
      "reaches too far");
}

TEST(SpoiltFill, ObjectsToAPocketLayerWithoutItsBed) {
  expect_refused(
      undermined_case(),
      [](Plan& plan) {
        auto& pieces = plan.fill.layers[0].pieces;
        pieces = geometry::subtract(pieces, {{geometry::circle(1), {}}});
      },
      "leaves out part of the bed");
}

TEST(SpoiltFill, ObjectsToStripsThatAreNotThoseOfTheTunnels) {
  expect_refused(
      tunnelled_case(true), [](Plan& plan) { plan.fill.strips.clear(); },
      "an explored tunnel has no strip");
  expect_refused(
      tunnelled_case(false),
      [](Plan& plan) {
        plan.fill.strips.push_back({.wound = "A", .clock = 3, .length_cm = 7, .width_cm = 1});
      },
      "a strip without an explored tunnel");
  expect_refused(
      tunnelled_case(false), [](Plan& plan) { forget(plan, "tunnel-unexplored"); },
      "an unexplored tunnel, and no finding");
}

TEST(SpoiltFilm, ObjectsToFilmShortByAMillimetre) {
  expect_refused(
      case_of(geometry::circle(6)),
      [](Plan& plan) {
        auto& film = plan.drapes[0].required_outline_cm;
        film = geometry::inset(film, 0.1).region;
      },
      "the required border is as narrow as");
}

TEST(SpoiltFilm, ObjectsToSheetsThatAreNotInStock) {
  expect_refused(
      case_of(geometry::circle(6)), [](Plan& plan) { plan.drapes[0].sheets[0].item = "a sheet"; },
      "is no film sheet in stock");
  wound::Case value = case_of(geometry::circle(6));
  value.supplies = supplies::built_in_catalogue();
  const Plan plan = dressing::plan_dressing(value);
  for (auto& item : *value.supplies) item.available = 0;
  EXPECT_THAT(broken_promises(value, plan), Contains(HasSubstr("than the shelf holds")));
}

TEST(SpoiltPort, ObjectsToRoomThatIsNotThere) {
  expect_refused(
      case_of(geometry::circle(6)), [](Plan& plan) { plan.drapes[0].port.room.value += 0.1; },
      "the port's room");
  expect_refused(
      case_of(geometry::circle(6)),
      [](Plan& plan) { plan.drapes[0].port.largest_aperture.value += 0.1; }, "largest aperture");
}

TEST(SpoiltBridge, ObjectsToAPadThatIsTooSmall) {
  expect_refused(
      small_case(),
      [](Plan& plan) {
        auto& drape = plan.drapes[0];
        drape.bridges.back().strip = geometry::subtract(
            drape.bridges.back().strip,
            geometry::Region{
                {geometry::circle(3, *drape.port.centre_cm + geometry::Point{2, 0}), {}}});
      },
      "the pad does not hold the aperture");
}

/// The plan was made before the case got what bars its bridge.
void expect_refused_with(wound::Case value,
                         const std::function<void(wound::Case&, geometry::Point)>& add,
                         const std::string& sentence) {
  const Plan plan = dressing::plan_dressing(value);
  ASSERT_THAT(broken_promises(value, plan), IsEmpty());
  const auto& line = plan.drapes[0].bridges.back().line;
  add(value, 0.5 * (line.front() + line.back()));
  EXPECT_THAT(broken_promises(value, plan), Contains(HasSubstr(sentence)));
}

TEST(SpoiltBridge, ObjectsToABridgeOverAZoneOrAWound) {
  const auto zone = [](wound::ZoneKind kind) {
    return [kind](wound::Case& value, geometry::Point at) {
      value.current().skin_zones.push_back({.kind = kind, .outline_cm = geometry::circle(0.4, at)});
    };
  };
  expect_refused_with(small_case(), zone(wound::ZoneKind::no_film),
                      "bridge lies where no film may");
  expect_refused_with(small_case(), zone(wound::ZoneKind::no_film),
                      "protective film lies where none may");
  expect_refused_with(small_case(), zone(wound::ZoneKind::no_port), "a bridge crosses a no_port");
  expect_refused_with(
      small_case(),
      [](wound::Case& value, geometry::Point at) {
        value.current().wounds.push_back(
            {.id = "B", .outline_cm = geometry::circle(0.4, at), .depth_cm = 1});
      },
      "a bridge lies on wound B");
}

TEST(SpoiltBridge, ObjectsToBareSkinUnderIt) {
  expect_refused(
      small_case(), [](Plan& plan) { plan.drapes[0].bridges.back().skin_protection.clear(); },
      "of bare skin");
  expect_refused(
      small_case(), [](Plan& plan) { plan.drapes[0].protection_sheets.clear(); },
      "a bridge has no film under it");
}

TEST(SpoiltFilmSheet, ObjectsToFilmsThatDoNotFitOnIt) {
  const wound::Case value = small_case();
  ASSERT_EQ(dressing::plan_dressing(value).film_layout.size(), 1U) << "film and skin protection";
  const auto second = [](Plan& plan) -> dressing::Placement& {
    return plan.film_layout.at(0).placements.at(1);
  };
  expect_refused(
      value,
      [&](Plan& plan) {
        second(plan).outline_cm.outer = geometry::circle(1, {1, -0.4});
      },
      "beyond its shared sheet");
  expect_refused(
      value,
      [&](Plan& plan) { second(plan).outline_cm = plan.film_layout[0].placements[0].outline_cm; },
      "too near each other");
  expect_refused(
      value, [](Plan& plan) { plan.drapes[0].sheets[0].shared = 0; }, "that it shares its sheet");
}

TEST(SpoiltBridge, ObjectsToFillerThatIsNotJoined) {
  expect_refused(
      pair_case(), [](Plan& plan) { plan.drapes[0].bridges.clear(); }, "filler is not joined");
}

TEST(SpoiltTexts, ObjectToACountThatDoesNotAddUp) {
  Plan plan = dressing::plan_dressing(pair_case());
  ASSERT_THAT(broken_texts(plan), IsEmpty());
  ++plan.fill.piece_count;
  EXPECT_THAT(broken_texts(plan), Contains(HasSubstr("do not add up")));
}

// Every relation, too, must be able to say no.
TEST(SpoiltRelation, Objects) {
  wound::Case value = case_of(geometry::ellipse(7, 5, {}, 20, 60));
  value.current().skin_zones = {{.outline_cm = geometry::circle(2, {5, 0})}};
  const Plan plan = dressing::plan_dressing(value);
  Plan spoilt = plan;
  auto& wound = spoilt.wounds[0];
  auto& drape = spoilt.drapes[0];
  wound.area = {wound.area.value + 1e-3, 0};
  spoilt.fill.top_area_cm2 = 1;
  drape.required_outline_cm = geometry::outset(drape.required_outline_cm, 5).region;
  drape.port.largest_aperture.value = 0;
  for (const Relation& relation : relations()) {
    EXPECT_THAT(relation.broken(value, plan, 3), IsEmpty()) << relation.name;
    EXPECT_THAT(relation.broken(value, spoilt, 3), Not(IsEmpty())) << relation.name;
  }
}

}  // namespace
}  // namespace drapewright::support
