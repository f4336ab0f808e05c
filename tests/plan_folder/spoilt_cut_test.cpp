// Cut layouts that are spoilt in one place each: the auditor must object.

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <functional>

#include "core/geometry/shapes.h"
#include "tests/support/plan_invariants.h"

namespace drapewright::support {
namespace {

using dressing::Plan;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

/// Two layers of two wounds under one film: four pieces, a bridge between them, one sheet size.
wound::Case several_pieces() {
  wound::Case value{.label = "spoilt"};
  value.cautions.reviewed = true;
  value.assessments.push_back({.date = "2026-01-01"});
  value.current().wounds.push_back(
      {.id = "A", .outline_cm = geometry::ellipse(7, 4), .depth_cm = 3});
  value.current().wounds.push_back(
      {.id = "B", .outline_cm = geometry::ellipse(5, 4, {10, 0}), .depth_cm = 3});
  value.supplies = supplies::built_in_catalogue();
  std::erase_if(*value.supplies, [](const supplies::StockItem& item) {
    return item.kind == supplies::Kind::filler_sheet &&
           item.item != "Filler sheet 20 x 12 x 1.5 cm";
  });
  return value;
}

struct SpoiltCut {
  const char* name;
  std::function<void(Plan&)> spoil;
  const char* sentence;
};

void PrintTo(const SpoiltCut& cut, std::ostream* out) { *out << cut.name; }

dressing::Placement& first(Plan& plan) { return plan.cut_layout.at(0).placements.at(0); }

const SpoiltCut cuts[] = {
    {"moved", [](Plan& plan) { first(plan).shift_cm.x += 0.01; }, "cut to another shape"},
    {"turned", [](Plan& plan) { first(plan).angle_deg += 1; }, "cut to another shape"},
    {"over_another",
     [](Plan& plan) {
       auto& placements = plan.cut_layout[0].placements;
       placements[1].outline_cm = placements[0].outline_cm;
     },
     "too near each other"},
    {"off_the_sheet",
     [](Plan& plan) {
       auto& outer = first(plan).outline_cm.outer;
       outer = geometry::moved(outer, {-30, 0});
     },
     "too near the edge of its sheet"},
    {"twice",
     [](Plan& plan) { plan.cut_layout[0].placements.push_back(plan.cut_layout[0].placements[0]); },
     "cut twice"},
    {"left_out", [](Plan& plan) { plan.cut_layout[0].placements.pop_back(); }, "are not cut"},
    {"another_sheet", [](Plan& plan) { plan.cut_layout[0].item = "gone"; }, "is not in stock"},
    {"sheet_forgotten",
     [](Plan& plan) {
       std::erase_if(plan.consumables, [](const dressing::Consumable& line) {
         return line.kind == supplies::Kind::filler_sheet;
       });
     },
     "not on the materials list"},
    {"off_cut_too_large",
     [](Plan& plan) {
       plan.cut_layout[0].off_cut = {{{0, 0}, {20, 12}}};
     },
     "too near a piece"},
};

class SpoiltCutTest : public testing::TestWithParam<SpoiltCut> {};

INSTANTIATE_TEST_SUITE_P(Each, SpoiltCutTest, testing::ValuesIn(cuts),
                         [](const auto& row) { return std::string(row.param.name); });

TEST_P(SpoiltCutTest, IsObjectedTo) {
  const wound::Case value = several_pieces();
  Plan plan = dressing::plan_dressing(value);
  ASSERT_THAT(broken_promises(value, plan), IsEmpty());
  ASSERT_GE(plan.cut_layout.at(0).placements.size(), 2U);
  GetParam().spoil(plan);
  EXPECT_THAT(broken_promises(value, plan), Contains(HasSubstr(GetParam().sentence)));
}

// Split pieces, tunnels with strips, a bridge to the port, sheets chosen by hand: all kept.
TEST(CutAudit, HoldsForWhatIsCutInParts) {
  wound::Case value = several_pieces();
  value.current().wounds[0].outline_cm = geometry::rectangle(35, 5);
  value.current().wounds[1].outline_cm = geometry::ellipse(2, 1.5, {60, 0});
  value.current().wounds[0].tunnels = {{.clock = 3, .length_cm = 24, .explored = true}};
  const Plan plan = dressing::plan_dressing(value);
  EXPECT_THAT(broken_promises(value, plan), IsEmpty());
  EXPECT_FALSE(plan.fill.seams.empty());
  EXPECT_GT(plan.fill.strips.at(0).parts, 1);
}

}  // namespace
}  // namespace drapewright::support
