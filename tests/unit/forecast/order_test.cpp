#include "core/forecast/order.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/forecast/caseload.h"
#include "tests/unit/forecast/simulation.h"

namespace drapewright::forecast {
namespace {

using testing::HasSubstr;

constexpr int first_day = 20000;

UseBetween a_day(double mean) {
  return [mean](int from, int to) { return poisson(mean * (to - from)); };
}

// R = d L + z s sqrt(L), a textbook's example: 30 a day, spread 5, 10 days, 95 %: safety
// stock 26.09 and R 326.09 with z rounded to 1.65; 326.01 with the exact z.
TEST(ReorderPoint, IsThatOfTheTextbook) {
  EXPECT_NEAR(reorder_point(30, 5, 10, 0, 1.65), 326.09, 0.005);
  EXPECT_NEAR(reorder_point(30, 5, 10, 0, normal_quantile(0.95)), 326.01, 0.005);
  EXPECT_NEAR(reorder_point(30, 5, 10, 0, 1.65) - 30 * 10, 26.09, 0.005);
  EXPECT_NEAR(reorder_point(30, 0, 10, 2, 1), 300 + 60, 1e-12);
}

TEST(ReorderPoint, ByTheExactDistributionMeetsTheTextbookForLargeUse) {
  const Order order = order_for({.item = "Film", .lead_days = 10}, first_day, 7, 0.95, a_day(100));
  EXPECT_NEAR(order.reorder_point, order.textbook_reorder_point, 1.5);
  EXPECT_NEAR(order.need, order.textbook_need, 1.5);
}

// Poisson, mean 4 and 6: 95 % are 8 and 10, from the table.
TEST(ReorderPoint, ByTheExactDistributionIsThatOfTheTable) {
  const Order order = order_for({.item = "Film", .lead_days = 4}, first_day, 2, 0.95, a_day(1));
  EXPECT_EQ(order.reorder_point, 8);
  EXPECT_EQ(order.need, 10);
}

TEST(Order, IsWhatIsMissingInFullPacks) {
  const ShelfItem item{.item = "Film",
                       .lots = {{.quantity = 3}},
                       .deliveries = {{.due = first_day + 2, .quantity = 1},
                                      {.due = first_day + 60, .quantity = 50}},
                       .pack_size = 5,
                       .lead_days = 4,
                       .unit_cost = 2.5};
  const Order order = order_for(item, first_day, 2, 0.95, a_day(1));
  EXPECT_EQ(order.on_hand, 3);
  EXPECT_EQ(order.on_order, 1);
  EXPECT_EQ(order.packs, 2);  // 10 - 4 = 6
  EXPECT_EQ(order.quantity, 10);
  EXPECT_DOUBLE_EQ(order.cost.value(), 25);
  EXPECT_THAT(order.arithmetic, HasSubstr("10 - 4 = 6 missing, 2 packs of 5 = 10 x 2.50 = 25.00"));
}

TEST(Order, IsNothingWhereTheShelfIsFull) {
  const ShelfItem item{.item = "Film", .lots = {{.quantity = 30}}, .lead_days = 4};
  const Order order = order_for(item, first_day, 2, 0.95, a_day(1));
  EXPECT_EQ(order.packs, 0);
  EXPECT_THAT(order.arithmetic, HasSubstr("nothing to order"));
}

TEST(Order, DoesNotCountWhatIsPastItsDateOrWillBe) {
  const ShelfItem item{.item = "Film",
                       .lots = {{.quantity = 9, .expires = first_day - 1},
                                {.quantity = 20, .expires = first_day + 1}},
                       .lead_days = 4};
  const Order order = order_for(item, first_day, 3, 0.95, a_day(1));
  EXPECT_EQ(order.on_hand, 20);
  EXPECT_EQ(order.expiring, 18);  // two of the twenty are used in two days on average
  EXPECT_GT(order.packs, 0);
}

TEST(Order, GrowsWithServiceLevelLeadTimeAndItsSpread) {
  const auto need = [](double level, double lead, double spread) {
    return order_for({.item = "Film", .lead_days = lead, .lead_spread_days = spread}, first_day, 7,
                     level, a_day(1.3))
        .need;
  };
  for (const double lead : {0.0, 3.0, 10.0}) {
    EXPECT_LE(need(0.90, lead, 0), need(0.95, lead, 0));
    EXPECT_LE(need(0.95, lead, 0), need(0.99, lead, 0));
    EXPECT_LE(need(0.95, lead, 0), need(0.95, lead + 1, 0));
  }
  EXPECT_LT(need(0.95, 10, 0), need(0.95, 10, 4));
}

/// What is needed of film for courses of every uncertainty.
int need_of_courses(double change_every_h, double level, double lead, double spread) {
  Settings settings = tests::uncertain();
  Caseload caseload(settings.new_patients_per_week);
  for (const char* started : {"2026-02-25", "2026-03-01"}) {
    wound::Case value = tests::example({started});
    value.dressing.change_every_h = change_every_h;
    caseload.add(tests::patient(value, settings), 5);
  }
  const UseBetween use = [&](int from, int to) { return caseload.use("Film", from, to); };
  return order_for({.item = "Film", .lead_days = lead, .lead_spread_days = spread},
                   tests::first_day, 7, level, use)
      .need;
}

TEST(Order, ForCoursesNeverFallsWithServiceLevelLeadTimeOrAShorterInterval) {
  int least = 0;
  for (const double level : {0.8, 0.9, 0.95, 0.975, 0.99, 0.999}) {
    EXPECT_GE(need_of_courses(72, level, 4, 0), least) << level;
    least = need_of_courses(72, level, 4, 0);
  }
  EXPECT_GT(least, need_of_courses(72, 0.8, 4, 0));
  least = 0;
  for (double lead = 0; lead <= 14; ++lead) {
    EXPECT_GE(need_of_courses(72, 0.95, lead, 0), least) << lead;
    least = need_of_courses(72, 0.95, lead, 0);
  }
  EXPECT_GT(least, need_of_courses(72, 0.95, 0, 0));
  EXPECT_GT(need_of_courses(72, 0.95, 7, 3), need_of_courses(72, 0.95, 7, 0));
  least = 0;
  for (const double interval : {168.0, 120.0, 96.0, 72.0, 48.0, 24.0}) {
    EXPECT_GE(need_of_courses(interval, 0.95, 4, 0), least) << interval;
    least = need_of_courses(interval, 0.95, 4, 0);
  }
  EXPECT_GT(least, 2 * need_of_courses(168, 0.95, 4, 0));
}

TEST(Order, OverAnUncertainLeadTimeIsTheMixture) {
  const Quantity lead(2, {0.5, 0, 0.5});  // 2 or 4 days
  const Quantity use = use_over_lead_time(a_day(1), lead, 0);
  for (int n = 0; n < 15; ++n) {
    EXPECT_NEAR(use.chance_of(n), (poisson(2).chance_of(n) + poisson(4).chance_of(n)) / 2, 1e-13);
  }
}

}  // namespace
}  // namespace drapewright::forecast
