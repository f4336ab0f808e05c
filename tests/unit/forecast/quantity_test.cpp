#include "core/forecast/quantity.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/base/error.h"

namespace drapewright::forecast {
namespace {

double total_of(const Quantity& quantity) {
  return std::accumulate(quantity.chances().begin(), quantity.chances().end(), 0.0);
}

/// By the formula itself, not by a library.
double poisson_chance(double mean, int n) {
  return std::exp(n * std::log(mean) - mean - std::lgamma(n + 1));
}

// Quantiles: tables of the Poisson and negative binomial distributions, calculated for this project
// and checked against the sums of their formulas.
TEST(KnownShapes, HaveTheQuantilesOfTheTables) {
  struct Row {
    double mean, variance;
    int at90, at95, at99;
  };
  for (const Row& row :
       {Row{2, 2, 4, 5, 6}, Row{4, 4, 7, 8, 9}, Row{6, 6, 9, 10, 12}, Row{10, 10, 14, 15, 18},
        Row{4, 8, 8, 9, 13}, Row{6, 12, 11, 12, 16}, Row{10, 20, 16, 18, 23}}) {
    const Quantity known =
        row.mean == row.variance ? poisson(row.mean) : negative_binomial(row.mean, row.variance);
    EXPECT_EQ(known.enough_for(0.90), row.at90) << row.mean << " " << row.variance;
    EXPECT_EQ(known.enough_for(0.95), row.at95) << row.mean << " " << row.variance;
    EXPECT_EQ(known.enough_for(0.99), row.at99) << row.mean << " " << row.variance;
    EXPECT_NEAR(known.mean(), row.mean, 1e-11);
    EXPECT_NEAR(known.variance(), row.variance, 1e-9);
  }
}

// 1.5 a day for 4 days from a stock of 8: P(D > 8) = 0.15276, calculated.
TEST(KnownShapes, GiveTheChanceOfRunningShort) {
  EXPECT_NEAR(1 - poisson(1.5 * 4).chance_of_at_most(8), 0.15276, 5e-6);
}

TEST(KnownShapes, FollowTheFormulaOfPoissonAtEveryCount) {
  for (const double mean : {0.01, 0.7, 25.0, 3000.0}) {
    const Quantity known = poisson(mean);
    for (int n = known.least(); n <= known.most(); ++n) {
      EXPECT_NEAR(known.chance_of(n), poisson_chance(mean, n), 1e-11) << mean << " " << n;
    }
  }
}

TEST(KnownShapes, RefuseWhatHasNoDistribution) {
  EXPECT_THROW(poisson(-1), InputError);
  EXPECT_THROW(poisson(std::nan("")), InputError);
  EXPECT_THROW(negative_binomial(4, 4), InputError);
  EXPECT_THROW(negative_binomial(0, 1), InputError);
  EXPECT_THROW(lead_time(-1, 0), InputError);
  EXPECT_THROW(compound_poisson(std::nan(""), Quantity()), InputError);
}

TEST(KnownShapes, LeadTimeKeepsItsMeanAndSpread) {
  const Quantity lead = lead_time(12, 3);
  EXPECT_NEAR(lead.mean(), 12, 1e-3);
  EXPECT_NEAR(lead.variance(), 9 + 1.0 / 12, 0.01);  // rounding to whole days adds a twelfth
  EXPECT_EQ(lead_time(5, 0), Quantity::exactly(5));
  EXPECT_EQ(lead_time(4.5, 0), Quantity::exactly(5));
}

TEST(Sums, OfPoissonsArePoisson) {
  const Quantity both = sum(poisson(3.3), poisson(4.9));
  const Quantity known = poisson(8.2);
  for (int n = 0; n <= known.most(); ++n) {
    EXPECT_NEAR(both.chance_of(n), known.chance_of(n), 1e-13) << n;
  }
}

TEST(Sums, OfCoinsAreBinomial) {
  const Quantity coins = repeated(Quantity(0, {0.7, 0.3}), 1000);
  for (const int n : {250, 300, 331}) {
    const double known = std::exp(std::lgamma(1001) - std::lgamma(n + 1) - std::lgamma(1001 - n) +
                                  n * std::log(0.3) + (1000 - n) * std::log(0.7));
    EXPECT_NEAR(coins.chance_of(n), known, 1e-11 * 1000) << n;
  }
  EXPECT_NEAR(coins.mean(), 300, 1e-8);
  EXPECT_NEAR(coins.variance(), 210, 1e-6);
}

TEST(Sums, KeepTheWholeAndAddMeansAndVariances) {
  const Quantity a(2, {0.2, 0.5, 0.3}), b(0, {0.6, 0, 0, 0.4});
  const Quantity both = sum({a, b, a});
  EXPECT_NEAR(total_of(both), 1, 1e-14);
  EXPECT_NEAR(both.mean(), 2 * a.mean() + b.mean(), 1e-13);
  EXPECT_NEAR(both.variance(), 2 * a.variance() + b.variance(), 1e-12);
  EXPECT_EQ(sum(std::vector<Quantity>{}), Quantity());
}

TEST(Sums, AreNotDisturbedByAThousandFoldingsOfTheTail) {
  const Quantity many = repeated(poisson(0.37), 10000);
  EXPECT_NEAR(many.mean(), 3700, 1e-6);
  EXPECT_NEAR(many.variance(), 3700, 1e-4);
  EXPECT_NEAR(total_of(many), 1, 1e-12);
  for (const double level : {0.9, 0.95, 0.99}) {
    EXPECT_EQ(many.enough_for(level), poisson(3700).enough_for(level)) << level;
  }
}

TEST(Sums, CompoundPoissonThinsAndMultiplies) {
  // Only a share of the arrivals uses the item, each two of it: Poisson again, times two.
  const Quantity compound = compound_poisson(12, Quantity(0, {0.75, 0, 0.25}));
  const Quantity known = poisson(3).times(2);
  for (int n = 0; n <= 40; ++n) {
    EXPECT_NEAR(compound.chance_of(n), known.chance_of(n), 1e-13) << n;
  }
  const Quantity large = compound_poisson(1500, Quantity(0, {0.5, 0.3, 0.2}));
  EXPECT_NEAR(large.mean(), 1500 * 0.7, 1e-6);
  EXPECT_NEAR(large.variance(), 1500 * (0.3 + 0.8), 1e-4);
}

TEST(Quantity, TellsWhatIsEnoughAndWhatIsShort) {
  const Quantity dice(1, std::vector<double>(6, 1.0));
  EXPECT_EQ(dice.enough_for(0.5), 3);
  EXPECT_EQ(dice.enough_for(0.51), 4);
  EXPECT_NEAR(dice.expected_short(4), (1 + 2) / 6.0, 1e-15);
  EXPECT_NEAR(dice.expected_short(0), 3.5, 1e-15);
  EXPECT_EQ(dice.expected_short(6), 0);
  EXPECT_EQ(dice.times(0), Quantity());
  EXPECT_NEAR(dice.times(3).chance_of(9), 1 / 6.0, 1e-15);
  EXPECT_EQ(dice.times(3).chance_of(10), 0);
}

// Standard normal quantiles from any table.
TEST(NormalQuantile, IsThatOfTheTables) {
  EXPECT_NEAR(normal_quantile(0.90), 1.28155, 5e-6);
  EXPECT_NEAR(normal_quantile(0.95), 1.64485, 5e-6);
  EXPECT_NEAR(normal_quantile(0.975), 1.95996, 5e-6);
  EXPECT_NEAR(normal_quantile(0.99), 2.32635, 5e-6);
}

}  // namespace
}  // namespace drapewright::forecast
