#include "core/forecast/shelf.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <random>

#include "core/base/error.h"

namespace drapewright::forecast {
namespace {

constexpr int first_day = 20000;

UseBetween a_day(double mean) {
  return [mean](int from, int to) { return poisson(mean * (to - from)); };
}
UseBetween exactly_a_day(int count) {
  return [count](int from, int to) { return Quantity::exactly(count * (to - from)); };
}

void expect_conserved(const ShelfForecast& shelf) {
  EXPECT_NEAR(shelf.used + shelf.left + shelf.wasted, shelf.start + shelf.received,
              1e-9 * (1 + shelf.start + shelf.received));
}

TEST(Shelf, OfCertainUseIsPlainArithmetic) {
  const ShelfItem item{.item = "Film",
                       .lots = {{.quantity = 10}},
                       .deliveries = {{.due = first_day + 9, .quantity = 20}}};
  const ShelfForecast shelf = follow_shelf(item, first_day, 4, exactly_a_day(1));
  ASSERT_EQ(shelf.weeks.size(), 4u);
  EXPECT_EQ(shelf.weeks[0].left, Quantity::exactly(3));
  EXPECT_EQ(shelf.weeks[1].left, Quantity::exactly(16));
  EXPECT_EQ(shelf.weeks[3].left, Quantity::exactly(2));
  EXPECT_EQ(shelf.short_of, 0);
  EXPECT_FALSE(shelf.run_out_week(0.05));
  expect_conserved(shelf);
}

TEST(Shelf, ThatRunsOutSaysWhen) {
  const ShelfForecast shelf =
      follow_shelf({.item = "Film", .lots = {{.quantity = 10}}}, first_day, 3, exactly_a_day(1));
  EXPECT_EQ(shelf.run_out_week(0.5), 2);
  EXPECT_NEAR(shelf.short_of, 11, 1e-12);
  EXPECT_NEAR(shelf.used, 10, 1e-12);
  expect_conserved(shelf);
}

TEST(Shelf, UsesWhatExpiresFirst) {
  const ShelfItem item{.item = "Film",
                       .lots = {{.quantity = 10, .expires = first_day + 27},
                                {.quantity = 10, .expires = first_day + 6}}};
  const ShelfForecast shelf = follow_shelf(item, first_day, 4, exactly_a_day(1));
  EXPECT_NEAR(shelf.wasted, 3, 1e-12);  // 7 of the first lot were used up to its last day
  EXPECT_NEAR(shelf.used, 17, 1e-12);
  EXPECT_NEAR(shelf.short_of, 11, 1e-12);
  expect_conserved(shelf);
}

TEST(Shelf, TakesOffWhatIsPastItsDate) {
  const ShelfItem item{.item = "Film",
                       .lots = {{.quantity = 5, .expires = first_day - 1}, {.quantity = 5}}};
  const ShelfForecast shelf = follow_shelf(item, first_day, 1, exactly_a_day(0));
  EXPECT_EQ(shelf.wasted_at_start, 5);
  EXPECT_EQ(shelf.left, 5);
  expect_conserved(shelf);
}

// 1.5 a day for 4 days from 8: P(D > 8) = 0.15276, calculated; here 6 in the week, from 8.
TEST(Shelf, RunsShortWithTheChanceOfItsUse) {
  const ShelfForecast shelf =
      follow_shelf({.item = "Film", .lots = {{.quantity = 8}}}, first_day, 1, a_day(6.0 / 7));
  EXPECT_NEAR(shelf.weeks[0].run_out, 0.15276, 5e-6);
  EXPECT_NEAR(shelf.short_of, poisson(6).expected_short(8), 1e-12);
  expect_conserved(shelf);
}

struct Totals {
  std::array<double, 4> sum{}, squares{};
  void add(const std::array<double, 4>& values) {
    for (std::size_t i = 0; i < 4; ++i) {
      sum[i] += values[i];
      squares[i] += values[i] * values[i];
    }
  }
};

/// Handles every piece by its lot: used, short, wasted, left.
std::array<double, 4> live_through(std::vector<std::array<int, 3>> lots, double mean, int days,
                                   std::mt19937_64& random) {
  std::array<double, 4> result{};
  for (int day = 0; day < days; ++day) {
    for (auto& [from, until, count] : lots) {
      if (from <= day && until <= day) result[2] += std::exchange(count, 0);
    }
    for (int n = std::poisson_distribution<>(mean)(random); n > 0; --n) {
      auto* first = static_cast<std::array<int, 3>*>(nullptr);
      for (auto& lot : lots) {
        if (lot[0] <= day && lot[2] > 0 && (first == nullptr || lot[1] < (*first)[1])) first = &lot;
      }
      if (first == nullptr) {
        ++result[1];
      } else {
        --(*first)[2];
        ++result[0];
      }
    }
  }
  for (const auto& lot : lots) {
    if (lot[0] < days) result[3] += lot[2];
  }
  return result;
}

TEST(Shelf, AgreesWithHandlingEveryPiece) {
  const std::vector<std::array<int, 3>> lots = {
      {0, 12, 20}, {0, 30, 10}, {17, 60, 25}, {40, 99, 9}};
  ShelfItem item{.item = "Film"};
  for (const auto& [from, until, count] : lots) {
    const int expires = first_day + until - 1;
    if (from == 0) item.lots.push_back({count, expires, ""});
    if (from > 0) item.deliveries.push_back({first_day + from, count, expires});
  }
  const ShelfForecast shelf = follow_shelf(item, first_day, 8, a_day(1.1));
  std::mt19937_64 random(7);
  Totals totals;
  constexpr int runs = 20000;
  for (int run = 0; run < runs; ++run) totals.add(live_through(lots, 1.1, 56, random));
  const std::array<double, 4> exact{shelf.used, shelf.short_of, shelf.wasted, shelf.left};
  for (std::size_t i = 0; i < 4; ++i) {
    const double mean = totals.sum[i] / runs;
    const double error = std::sqrt((totals.squares[i] / runs - mean * mean) / runs);
    EXPECT_NEAR(exact[i], mean, 4.5 * error) << i;
  }
  expect_conserved(shelf);
}

TEST(Shelf, IsConservedWhateverHappens) {
  std::mt19937_64 random(11);
  const auto any = [&](int most) { return std::uniform_int_distribution<>(0, most)(random); };
  for (int round = 0; round < 60; ++round) {
    ShelfItem item{.item = "Film"};
    for (int n = any(4); n > 0; --n) item.lots.push_back({any(40), first_day + any(80) - 10, ""});
    for (int n = any(3); n > 0; --n) {
      item.deliveries.push_back({first_day + any(60), any(30), first_day + any(90)});
    }
    expect_conserved(follow_shelf(item, first_day, 6, a_day(any(30) / 10.0)));
  }
}

TEST(Shelf, SaysWhenADeliveryExpiresBeforeWhatIsThere) {
  ShelfItem item{.item = "Film",
                 .lots = {{.quantity = 5, .expires = first_day + 40}},
                 .deliveries = {{first_day + 3, 5, first_day + 20}}};
  EXPECT_TRUE(follow_shelf(item, first_day, 2, a_day(0.1)).out_of_order);
  item.deliveries[0].expires = first_day + 50;
  EXPECT_FALSE(follow_shelf(item, first_day, 2, a_day(0.1)).out_of_order);
}

TEST(Shelf, RefusesWhatNoShelfHolds) {
  EXPECT_THROW(check(ShelfItem{.item = ""}), InputError);
  EXPECT_THROW(check(ShelfItem{.item = "A", .lots = {{.quantity = -1}}}), InputError);
  EXPECT_THROW(check(ShelfItem{.item = "A", .pack_size = 0}), InputError);
  EXPECT_THROW(check(ShelfItem{.item = "A", .lead_days = std::nan("")}), InputError);
}

}  // namespace
}  // namespace drapewright::forecast
