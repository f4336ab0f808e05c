// Films of one application that share a sheet. That they lie on it as they are and clear of each
// other is GEOS's to judge (tests/support/audit_film), over every demo case and property test.
#include <gtest/gtest.h>

#include "core/geometry/measures.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

using supplies::StockItem;

StockItem film(const char* item, double length_cm, double width_cm, std::optional<double> cost,
               std::optional<int> available = {}) {
  return {.item = item,
          .kind = supplies::Kind::film_sheet,
          .length_cm = length_cm,
          .width_cm = width_cm,
          .unit_cost = cost,
          .available = available};
}

/// Two wounds too far apart for one film; with a border of 5 cm each film is 15 x 14 cm.
wound::Case two_films(std::vector<StockItem> films) {
  wound::Case value = case_of(geometry::rectangle(5, 4));
  add_wound(value, "B", geometry::rectangle(5, 4, {40, 0}));
  value.dressing.border_cm = 5;
  value.supplies = supplies::built_in_catalogue();
  std::erase_if(*value.supplies,
                [](const StockItem& item) { return item.kind == supplies::Kind::film_sheet; });
  value.supplies->insert(value.supplies->end(), films.begin(), films.end());
  return value;
}

TEST(FilmSharing, CutsTwoFilmsFromALargerSheetWhereThatIsCheaper) {
  const Plan plan =
      plan_dressing(two_films({film("single", 16, 16, 6.0), film("double", 32, 16, 10.0)}));
  ASSERT_EQ(plan.film_layout.size(), 1U);
  EXPECT_EQ(plan.film_layout[0].item, "double");
  EXPECT_EQ(plan.film_layout[0].placements.size(), 2U);
  ASSERT_EQ(plan.drapes.size(), 2U);
  for (const Drape& drape : plan.drapes) {
    ASSERT_EQ(drape.sheets.size(), 1U);
    EXPECT_EQ(drape.sheets[0].item, "double");
    EXPECT_EQ(drape.sheets[0].shared, 1);
  }
  ASSERT_NE(finding(plan, "film-shared"), nullptr);
  EXPECT_NE(finding(plan, "film-shared")->text.find("cost 10.00 instead of 12.00"),
            std::string::npos);
}

TEST(FilmSharing, CountsASharedSheetOnceInTheMaterials) {
  const Plan plan =
      plan_dressing(two_films({film("single", 16, 16, 6.0), film("double", 32, 16, 10.0)}));
  const Consumable* sheets = consumable(plan, supplies::Kind::film_sheet);
  ASSERT_NE(sheets, nullptr);
  EXPECT_EQ(sheets->item, "double");
  EXPECT_EQ(sheets->per_application, 1);
  EXPECT_EQ(sheets->per_course, 5);
}

TEST(FilmSharing, LaysTheSheetOverTheWoundAsTheFilmIsCutFromIt) {
  const Plan plan =
      plan_dressing(two_films({film("single", 16, 16, 6.0), film("double", 32, 16, 10.0)}));
  for (const Drape& drape : plan.drapes) {
    const geometry::Rectangle& place = drape.sheets.at(0).place;
    for (const geometry::Point& corner : drape.outline_cm.at(0).outer) {
      const geometry::Point on = geometry::turned(corner - place.centre, -place.angle_deg);
      EXPECT_LE(std::abs(on.x), place.length_cm / 2 + 1e-6);
      EXPECT_LE(std::abs(on.y), place.width_cm / 2 + 1e-6);
    }
  }
}

TEST(FilmSharing, KeepsASheetForEachWhereThatIsCheaper) {
  const Plan plan =
      plan_dressing(two_films({film("single", 16, 16, 6.0), film("double", 32, 16, 13.0)}));
  EXPECT_TRUE(plan.film_layout.empty());
  EXPECT_EQ(plan.drapes.at(0).sheets.at(0).item, "single");
  EXPECT_EQ(finding(plan, "film-shared"), nullptr);
}

TEST(FilmSharing, OpensOneSheetRatherThanTwoAtTheSameCost) {
  const Plan plan =
      plan_dressing(two_films({film("single", 16, 16, 5.0), film("double", 32, 16, 10.0)}));
  ASSERT_EQ(plan.film_layout.size(), 1U);
  EXPECT_EQ(plan.film_layout[0].item, "double");
}

TEST(FilmSharing, TakesNoMoreThanTheShelfHolds) {
  const Plan plan =
      plan_dressing(two_films({film("single", 16, 16, 6.0), film("double", 32, 16, 10.0, 0)}));
  EXPECT_TRUE(plan.film_layout.empty());
}

// Where the border is short, all that a sheet has to spare may be wanted over the wound.
TEST(FilmSharing, LeavesAFilmWithAShortBorderItsSheet) {
  wound::Case value = two_films({film("single", 16, 16, 6.0), film("double", 32, 16, 10.0)});
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_film, .outline_cm = geometry::rectangle(4, 20, {6.5, 0})});
  const Plan plan = plan_dressing(value);
  ASSERT_NE(finding(plan, "border-short"), nullptr);
  EXPECT_TRUE(plan.film_layout.empty());
}

}  // namespace
}  // namespace drapewright::dressing
