// Which sheets to open: stock, thickness, splitting, choice, and what the plan says of it. That
// every piece lies on its sheets as it is and clear of the others is GEOS's to judge
// (tests/support/audit_cut), over every demo case and every plan of the property tests.
#include <gtest/gtest.h>

#include <cmath>

#include "core/geometry/measures.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

using supplies::StockItem;

StockItem sheet(const char* item, double length_cm, double width_cm, double thickness_cm,
                std::optional<double> cost = {}, std::optional<int> available = {}) {
  return {.item = item,
          .kind = supplies::Kind::filler_sheet,
          .length_cm = length_cm,
          .width_cm = width_cm,
          .thickness_cm = thickness_cm,
          .unit_cost = cost,
          .available = available};
}

/// Nothing but these filler sheets in stock.
wound::Case with_stock(geometry::Ring outline, std::vector<StockItem> sheets) {
  wound::Case value = case_of(std::move(outline));
  value.supplies = std::move(sheets);
  return value;
}

const SheetChoice& chosen(const Plan& plan, std::size_t thickness = 0) {
  const auto& choices = plan.sheet_comparison.at(thickness).choices;
  return *std::ranges::find(choices, true, &SheetChoice::chosen);
}

Plan compared(const wound::Case& value) {
  return plan_dressing(value, {}, {.compare_sheets = true});
}

double area_on_sheets(const Plan& plan) {
  double area_cm2 = 0;
  for (const CutSheet& sheet : plan.cut_layout) {
    for (const auto& placement : sheet.placements) area_cm2 += geometry::area(placement.outline_cm);
  }
  return area_cm2;
}

// An 8 x 5 ellipse less an inset of 0.3 cm is 7.4 x 4.4 cm: a sheet of 10 x 8 cm holds it, and of
// the three built-in sizes it is the cheapest.
TEST(CutLayout, OpensTheCheapestSheetThatHoldsThePiece) {
  const Plan plan = compared(case_of(geometry::ellipse(8, 5)));
  ASSERT_EQ(plan.cut_layout.size(), 1U);
  const CutSheet& sheet = plan.cut_layout[0];
  EXPECT_EQ(sheet.item, "Filler sheet 10 x 8 x 1.5 cm");
  ASSERT_EQ(sheet.placements.size(), 1U);
  EXPECT_EQ(sheet.placements[0].wound, "A");
  EXPECT_NEAR(sheet.used_fraction, plan.fill.area_cm2 / 80, 1e-6);
  EXPECT_TRUE(chosen(plan).best_possible);
  EXPECT_EQ(chosen(plan).items.size(), 3U) << "all stock of the thickness together";
  EXPECT_EQ(plan.sheet_comparison[0].choices.size(), 4U) << "and each size alone";
}

TEST(CutLayout, GivesTheMaterialsTheirNumberOfSheets) {
  const Plan plan = plan_dressing(case_of(geometry::ellipse(8, 5)));
  const Consumable* filler = consumable(plan, supplies::Kind::filler_sheet);
  ASSERT_NE(filler, nullptr);
  EXPECT_FALSE(filler->estimate);
  EXPECT_EQ(filler->per_application, 1);
  EXPECT_EQ(filler->per_course, 5);
  EXPECT_NE(filler->basis.find("5 applications x 1 sheet"), std::string::npos) << filler->basis;
}

// Two small wounds share a sheet; a gap that keeps them from it takes a second one.
TEST(CutLayout, KeepsTheGapBetweenPieces) {
  wound::Case value = with_stock(geometry::rectangle(5, 4), {sheet("S", 10, 5, 1.5, 5.0)});
  add_wound(value, "B", geometry::rectangle(5, 4, {40, 0}));
  value.dressing.inset_cm = 0;
  value.dressing.piece_gap_cm = 0;
  EXPECT_EQ(plan_dressing(value).cut_layout.size(), 1U);
  value.dressing.piece_gap_cm = 0.2;
  EXPECT_EQ(plan_dressing(value).cut_layout.size(), 2U);
}

TEST(CutLayout, OpensNoMoreOfASizeThanThereAre) {
  wound::Case value = with_stock(geometry::rectangle(9, 7), {sheet("few", 10, 8, 1.5, 1.0, 1),
                                                             sheet("many", 10, 8, 1.5, 9.0)});
  add_wound(value, "B", geometry::rectangle(9, 7, {40, 0}));
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.cut_layout.size(), 2U);
  EXPECT_NE(plan.cut_layout[0].item, plan.cut_layout[1].item);
  EXPECT_EQ(chosen(plan).cost, 10);
}

TEST(CutLayout, SaysWhichPiecesFoundNoSheet) {
  wound::Case value = with_stock(geometry::rectangle(9, 7), {sheet("one", 10, 8, 1.5, 1.0, 1)});
  add_wound(value, "B", geometry::rectangle(9, 7, {40, 0}));
  const Plan plan = plan_dressing(value);
  EXPECT_EQ(plan.cut_layout.size(), 1U);
  EXPECT_EQ(chosen(plan).missing, 1);
  EXPECT_FALSE(chosen(plan).best_possible);
  EXPECT_NE(finding(plan, "filler-sheets-lacking"), nullptr);
}

TEST(CutLayout, IsEmptyAndSaysSoWhereThereIsNoFiller) {
  const Plan plan = plan_dressing(with_stock(geometry::ellipse(8, 5), {}));
  EXPECT_TRUE(plan.cut_layout.empty());
  EXPECT_EQ(consumable(plan, supplies::Kind::filler_sheet), nullptr);
  EXPECT_NE(finding(plan, "no-filler-sheet"), nullptr);
  EXPECT_EQ(plan.fill.piece_count, 1) << "it still takes a piece";
}

// 2 cm of filler where only sheets of 3 cm lie: the plan is for those, and says what it costs.
TEST(CutLayout, ThinsAThickerSheetWhereNoOtherIsThere) {
  wound::Case value = with_stock(geometry::ellipse(8, 5), {sheet("S", 10, 8, 3, 5.0)});
  value.dressing.filler_thickness_cm = 2;
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.cut_layout.size(), 1U);
  EXPECT_EQ(plan.cut_layout[0].thickness_cm, 3);
  EXPECT_EQ(plan.fill.layers.at(0).sheet_thickness_cm, 3);
  EXPECT_NE(finding(plan, "sheet-thinned"), nullptr);
}

// 34.4 x 2.4 cm fits no sheet of 20 x 12 cm: two parts, one seam, one more piece everywhere.
TEST(CutLayout, SplitsAPieceThatFitsNoSheet) {
  const Plan plan =
      plan_dressing(with_stock(geometry::rectangle(35, 3), {sheet("S", 20, 12, 1.5, 5.0)}));
  EXPECT_EQ(plan.fill.piece_count, 2);
  EXPECT_EQ(plan.fill.layers.at(0).pieces.size(), 2U);
  ASSERT_EQ(plan.fill.seams.size(), 1U);
  EXPECT_NEAR(geometry::distance(plan.fill.seams[0].line.from, plan.fill.seams[0].line.to), 2.4,
              1e-2);
  EXPECT_EQ(chosen(plan).pieces, 2);
  EXPECT_EQ(chosen(plan).seams, 1);
  EXPECT_NEAR(area_on_sheets(plan), plan.fill.area_cm2, 1e-3);
  const Finding* split = finding(plan, "piece-split");
  ASSERT_NE(split, nullptr);
  EXPECT_TRUE(split->where_cm.has_value());
  EXPECT_NE(finding(plan, "several-pieces"), nullptr) << "the count goes on the dressing";
}

TEST(CutLayout, CutsStripsOfExploredTunnels) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.current().wounds[0].tunnels = {{.clock = 3, .length_cm = 3, .explored = true}};
  const Plan plan = plan_dressing(value);
  int strips = 0;
  for (const CutSheet& sheet : plan.cut_layout) {
    strips +=
        static_cast<int>(std::ranges::count(sheet.placements, PieceUse::strip, &Placement::use));
  }
  EXPECT_EQ(strips, 1);
}

TEST(CutLayout, CutsTheBridgeWithItsPad) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.dressing.bridge_wanted = true;
  const Plan plan = plan_dressing(value);
  const double bridge_cm2 = geometry::area(plan.drapes.at(0).bridges.at(0).strip);
  EXPECT_NEAR(area_on_sheets(plan), plan.fill.area_cm2 + bridge_cm2, 1e-3);
}

// What a hand chose is followed, and set beside the cheapest.
TEST(SheetChoices, AreFollowedAndCompared) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.dressing.filler_items = {"Filler sheet 20 x 12 x 1.5 cm"};
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.cut_layout.size(), 1U);
  EXPECT_EQ(plan.cut_layout[0].item, value.dressing.filler_items[0]);
  EXPECT_EQ(consumable(plan, supplies::Kind::filler_sheet)->item, value.dressing.filler_items[0]);
  EXPECT_EQ(chosen(plan).cost, 21);
  EXPECT_EQ(plan.sheet_comparison[0].choices.front().cost, 9) << "the cheapest of all stock";
  EXPECT_NE(finding(plan, "sheets-chosen-by-hand"), nullptr);
}

TEST(SheetChoices, ThatAreNotInStockArePassedOver) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  value.dressing.filler_items = {"gone"};
  const Plan plan = plan_dressing(value);
  EXPECT_EQ(plan.cut_layout.size(), 1U);
  EXPECT_NE(finding(plan, "filler-item-unknown"), nullptr);
}

TEST(SheetChoices, RankByAreaWhereNoCostsAreGiven) {
  const Plan plan = plan_dressing(with_stock(
      geometry::ellipse(8, 5), {sheet("large", 20, 12, 1.5), sheet("small", 10, 8, 1.5)}));
  ASSERT_EQ(plan.cut_layout.size(), 1U);
  EXPECT_EQ(plan.cut_layout[0].item, "small");
  EXPECT_FALSE(chosen(plan).cost.has_value());
}

/// Twelve layers of filler that take some thought to lay out.
wound::Case many_pieces() {
  wound::Case value = with_stock(geometry::ellipse(7, 3),
                                 {sheet("S", 10, 8, 1.5, 9.0), sheet("L", 20, 12, 1.5, 21.0)});
  add_wound(value, "B", geometry::ellipse(6, 4, {40, 0}, 25));
  add_wound(value, "C", geometry::rectangle(5, 3, {80, 0}));
  for (wound::Wound& wound : value.current().wounds) wound.depth_cm = 6;
  return value;
}

TEST(CutEffort, IsRepeatableAndNeverMakesItWorse) {
  const wound::Case value = many_pieces();
  const Plan quick = plan_dressing(value);
  const PlanOptions options{.cut = {.steps = 300}};
  const Plan first = plan_dressing(value, {}, options), again = plan_dressing(value, {}, options);
  EXPECT_LE(*chosen(first).cost, *chosen(quick).cost);
  ASSERT_EQ(first.cut_layout.size(), again.cut_layout.size());
  for (std::size_t i = 0; i < first.cut_layout.size(); ++i) {
    ASSERT_EQ(first.cut_layout[i].placements.size(), again.cut_layout[i].placements.size());
    for (std::size_t j = 0; j < first.cut_layout[i].placements.size(); ++j) {
      EXPECT_EQ(first.cut_layout[i].placements[j].shift_cm,
                again.cut_layout[i].placements[j].shift_cm);
    }
  }
}

TEST(CutEffort, LeavesNoOtherChoiceWorseThanWhatWasFoundWithIt) {
  const Plan plan =
      plan_dressing(many_pieces(), {}, {.cut = {.steps = 300}, .compare_sheets = true});
  for (const SheetChoice& choice : plan.sheet_comparison.at(0).choices) {
    const bool same = std::ranges::all_of(chosen(plan).opened, [&](const auto& opened) {
      return std::ranges::find(choice.items, opened.item) != choice.items.end();
    });
    if (same) {
      EXPECT_LE(*choice.cost, *chosen(plan).cost);
    }
  }
}

TEST(CutEffort, TellsOfWholePlansTheLastOfThemTheResult) {
  std::vector<Plan> told;
  PlanOptions options{.cut = {.steps = 300}};
  options.on_better = [&](const Plan& plan) { told.push_back(plan); };
  const Plan plan = plan_dressing(many_pieces(), {}, options);
  ASSERT_FALSE(told.empty());
  EXPECT_EQ(told.back().cut_layout.size(), plan.cut_layout.size());
  EXPECT_EQ(chosen(told.back()).cost, chosen(plan).cost);
  EXPECT_EQ(told.front().drapes.size(), plan.drapes.size());
}

TEST(CutEffort, EndsWhenTimeIsUp) {
  int asked = 0;
  PlanOptions options{.cut = {.steps = 1'000'000'000}};
  options.cut.out_of_time = [&](double) { return ++asked > 50; };
  EXPECT_FALSE(plan_dressing(many_pieces(), {}, options).cut_layout.empty());
}

}  // namespace
}  // namespace drapewright::dressing
