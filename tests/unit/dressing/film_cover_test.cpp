#include "core/dressing/film_cover.h"

#include <gtest/gtest.h>

#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/rectangle.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

supplies::StockList stock_of(std::vector<std::pair<double, double>> sizes) {
  supplies::StockList list;
  for (const auto& [length, width] : sizes) {
    list.push_back({.item = std::to_string(length),
                    .kind = supplies::Kind::film_sheet,
                    .length_cm = length,
                    .width_cm = width,
                    .unit_cost = length * width});
  }
  return list;
}

double bare_cm2(const FilmCover& cover, const geometry::Region& film) {
  geometry::Region rest = film;
  for (const FilmSheet& sheet : cover.sheets) {
    rest = geometry::subtract(rest, {{geometry::corners(sheet.place), {}}});
  }
  return geometry::area(rest);
}

// 38 x 18 cm is two sheets of 20 x 20 with 2 cm of overlap, and not with 2.1.
TEST(FilmCover, UsesTheOverlapExactly) {
  const geometry::Region film = {{geometry::rectangle(38, 18, {4, 1}, 17), {}}};
  const supplies::StockList stock = stock_of({{20, 20}});
  FilmShelf shelf(stock);
  const auto two = cover_with_sheets(film, 2, shelf);
  ASSERT_TRUE(two.has_value());
  EXPECT_EQ(two->sheets.size(), 2u);
  EXPECT_EQ(two->seams.size(), 1u);
  EXPECT_LT(bare_cm2(*two, film), 1e-3);
  const auto three = cover_with_sheets(film, 2.1, shelf);
  ASSERT_TRUE(three.has_value());
  EXPECT_EQ(three->sheets.size(), 3u);
}

TEST(FilmCover, LeavesNothingBareOnRoundFilms) {
  const supplies::StockList stock = stock_of({{40, 30}, {20, 20}});
  for (const double diameter : {45.0, 60.0, 80.0}) {
    FilmShelf shelf(stock);
    const geometry::Region film = {{geometry::circle(diameter), {}}};
    const auto cover = cover_with_sheets(film, 1, shelf);
    ASSERT_TRUE(cover.has_value()) << diameter;
    EXPECT_LT(bare_cm2(*cover, film), 0.05) << diameter;
    EXPECT_GE(static_cast<int>(cover->sheets.size()),
              least_possible_sheets(geometry::area(film), shelf));
  }
}

TEST(FilmCover, TakesASmallerSheetWhereItIsEnough) {
  const supplies::StockList stock = stock_of({{30, 30}, {15, 15}});
  FilmShelf shelf(stock);
  // A broad part and a narrow tail.
  const geometry::Region film = {
      {{{0, 0}, {28, 0}, {28, 14}, {40, 14}, {40, 20}, {28, 20}, {28, 28}, {0, 28}}, {}}};
  const auto cover = cover_with_sheets(film, 1, shelf);
  ASSERT_TRUE(cover.has_value());
  ASSERT_EQ(cover->sheets.size(), 2u);
  EXPECT_EQ(std::ranges::count_if(cover->sheets,
                                  [](const FilmSheet& s) { return s.place.length_cm == 15; }),
            1);
}

TEST(FilmCover, GivesUpWhenTheShelfRunsOutAndTakesNothing) {
  supplies::StockList stock = stock_of({{20, 20}});
  stock[0].available = 1;
  FilmShelf shelf(stock);
  const geometry::Region film = {{geometry::rectangle(38, 18), {}}};
  EXPECT_FALSE(cover_with_sheets(film, 2, shelf).has_value());
  EXPECT_TRUE(shelf.take(geometry::rectangle(10, 10)).has_value()) << "still on the shelf";
}

TEST(FilmCover, HasNoAnswerWhenTheOverlapEatsTheSheet) {
  const supplies::StockList stock = stock_of({{5, 4}});
  FilmShelf shelf(stock);
  EXPECT_FALSE(cover_with_sheets({{geometry::rectangle(38, 18), {}}}, 5, shelf).has_value());
}

TEST(Film, LargerThanAnySheetTakesSeveral) {
  const Plan plan = plan_dressing(case_of(geometry::ellipse(45, 25)));
  EXPECT_GE(plan.drapes[0].sheets.size(), 2u);
  EXPECT_NE(finding(plan, "several-film-sheets"), nullptr);
  EXPECT_EQ(consumable(plan, supplies::Kind::film_sheet)->estimate, false);
}

}  // namespace
}  // namespace drapewright::dressing
