#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>

#include "core/base/error.h"
#include "core/geometry/shapes.h"
#include "core/wound/case.h"

namespace drapewright::wound {
namespace {

Case plain() {
  Case value;
  value.label = "Demo";
  value.assessments.push_back({.date = "2026-02-28"});
  value.current().wounds.push_back({.id = "A", .outline_cm = geometry::ellipse(8, 5)});
  return value;
}

struct Fault {
  const char* name;
  std::function<void(Case&)> break_it;
  const char* pointer;
};

class CheckRefuses : public testing::TestWithParam<Fault> {};

TEST_P(CheckRefuses, WithThePointerOfTheMember) {
  Case value = plain();
  ASSERT_NO_THROW(check(value));
  GetParam().break_it(value);
  try {
    check(value);
    FAIL() << "accepted";
  } catch (const InputError& error) {
    EXPECT_EQ(error.place().pointer, GetParam().pointer) << error.what();
    EXPECT_FALSE(error.expected().empty());
  }
}

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

INSTANTIATE_TEST_SUITE_P(
    Faults, CheckRefuses,
    testing::Values(
        Fault{"empty_label", [](Case& c) { c.label = ""; }, "/label"},
        Fault{"long_label", [](Case& c) { c.label = std::string(81, 'x'); }, "/label"},
        Fault{"no_assessment", [](Case& c) { c.assessments.clear(); }, "/assessments"},
        Fault{"no_such_day", [](Case& c) { c.current().date = "2026-02-30"; },
              "/assessments/0/date"},
        Fault{"german_date", [](Case& c) { c.current().date = "28.02.2026"; },
              "/assessments/0/date"},
        Fault{"no_wound", [](Case& c) { c.current().wounds.clear(); }, "/assessments/0/wounds"},
        Fault{"same_id", [](Case& c) { c.current().wounds.push_back(c.current().wounds[0]); },
              "/assessments/0/wounds/1/id"},
        Fault{"two_points",
              [](Case& c) {
                c.current().wounds[0].outline_cm = {{0, 0}, {1, 1}};
              },
              "/assessments/0/wounds/0/outline_cm"},
        Fault{"bow_tie",
              [](Case& c) {
                c.current().wounds[0].outline_cm = {{0, 0}, {4, 4}, {4, 0}, {0, 4}};
              },
              "/assessments/0/wounds/0/outline_cm"},
        Fault{"not_finite", [](Case& c) { c.current().wounds[0].outline_cm[3].x = nan; },
              "/assessments/0/wounds/0/outline_cm"},
        Fault{"too_large",
              [](Case& c) { c.current().wounds[0].outline_cm = geometry::ellipse(101, 5); },
              "/assessments/0/wounds/0/outline_cm"},
        Fault{"island_outside",
              [](Case& c) {
                c.current().wounds[0].islands_cm = {geometry::circle(1, {20, 0})};
              },
              "/assessments/0/wounds/0/islands_cm"},
        Fault{"negative_depth", [](Case& c) { c.current().wounds[0].depth_cm = -1; },
              "/assessments/0/wounds/0/depth_cm"},
        Fault{"hour_13",
              [](Case& c) { c.current().wounds[0].tunnels = {{.clock = 13, .length_cm = 2}}; },
              "/assessments/0/wounds/0/tunnels/0/clock"},
        Fault{
            "pocket_without_extent",
            [](Case& c) { c.current().wounds[0].undermining = {{.from_clock = 1, .to_clock = 3}}; },
            "/assessments/0/wounds/0/undermining/0/extent_cm"},
        Fault{"zone_of_a_line",
              [](Case& c) {
                c.current().skin_zones = {{.outline_cm = {{0, 0}, {1, 0}, {2, 0}}}};
              },
              "/assessments/0/skin_zones/0/outline_cm"},
        Fault{"inset_over_2", [](Case& c) { c.dressing.inset_cm = 2.1; }, "/dressing/inset_cm"},
        Fault{"pressure_above_air", [](Case& c) { c.dressing.pressure_mmhg = 125; },
              "/dressing/pressure_mmhg"},
        Fault{"interval_of_nothing", [](Case& c) { c.dressing.change_every_h = 0; },
              "/dressing/change_every_h"},
        Fault{"girth_of_nothing", [](Case& c) { c.limb_girth_cm = 0; }, "/limb_girth_cm"},
        Fault{"girth_over_300", [](Case& c) { c.limb_girth_cm = 300.1; }, "/limb_girth_cm"},
        Fault{"port_nowhere",
              [](Case& c) {
                c.dressing.port_places_cm = {{1, 1}, {nan, 1}};
              },
              "/dressing/port_places_cm/1"},
        Fault{"sheet_without_sides",
              [](Case& c) { c.supplies = {{.item = "Film", .kind = supplies::Kind::film_sheet}}; },
              "/supplies/0"},
        Fault{"minus_one_piece",
              [](Case& c) { c.applications = {{.date = "2026-01-01", .pieces_placed = -1}}; },
              "/applications/0/pieces_placed"}),
    [](const auto& fault) { return fault.param.name; });

TEST(Check, CountsCharactersNotBytes) {
  Case value = plain();
  value.label.clear();
  for (int i = 0; i < 80; ++i) value.label += "\xC3\xA4";  // 80 times a umlaut
  EXPECT_NO_THROW(check(value));
}

TEST(Check, NamesThePointOfAFaultyShape) {
  try {
    check_outline({{0, 0}, {4, 4}, {4, 0}, {0, 4}}, {}, "/w");
    FAIL() << "accepted";
  } catch (const InputError& error) {
    ASSERT_TRUE(error.place().drawing.has_value());
    EXPECT_NEAR(error.place().drawing->x_cm, 2, 1e-9);
    EXPECT_NEAR(error.place().drawing->y_cm, 2, 1e-9);
  }
}

TEST(Check, AcceptsALeapDay) {
  Case value = plain();
  value.current().date = "2028-02-29";
  EXPECT_NO_THROW(check(value));
}

TEST(Stock, IsTheCasesOwnOrTheCatalogue) {
  Case value = plain();
  EXPECT_EQ(&stock_of(value), &supplies::built_in_catalogue());
  value.supplies = supplies::StockList{};
  EXPECT_TRUE(stock_of(value).empty());
}

}  // namespace
}  // namespace drapewright::wound
