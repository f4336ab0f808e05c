#include "core/forecast/convolution.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>
#include <random>

#include "core/forecast/quantity.h"

namespace drapewright::forecast {
namespace {

std::vector<double> any_chances(std::size_t count, std::mt19937_64& random) {
  std::vector<double> chances(count);
  double total = 0;
  for (double& chance : chances) total += chance = std::uniform_real_distribution<>()(random);
  for (double& chance : chances) chance /= total;
  return chances;
}

TEST(Convolution, OfLongOnesIsThatTermByTerm) {
  std::mt19937_64 random(5);
  for (const auto& [a, b] : {std::pair{160, 160}, {161, 4000}, {1000, 777}, {2049, 2048}}) {
    const auto one = any_chances(static_cast<std::size_t>(a), random);
    const auto other = any_chances(static_cast<std::size_t>(b), random);
    const auto fast = convolved(one, other), slow = convolved_by_terms(one, other);
    ASSERT_EQ(fast.size(), slow.size());
    for (std::size_t n = 0; n < fast.size(); ++n) ASSERT_NEAR(fast[n], slow[n], 1e-17) << a << n;
  }
}

TEST(Convolution, NeverGoesBelowNothing) {
  const auto many = poisson(3000).chances();
  const auto sums = convolved(many, many);
  EXPECT_GE(*std::ranges::min_element(sums), 0);
  EXPECT_NEAR(std::accumulate(sums.begin(), sums.end(), 0.0), 1, 1e-13);
}

// The sum of two Poisson counts is one with the sum of the means, in its tails as well.
TEST(Convolution, OfPoissonCountsIsThatOfTheirMeans) {
  const Quantity added = sum(poisson(3000), poisson(5000)), known = poisson(8000);
  for (const double level : {1e-9, 1e-6, 0.05, 0.5, 0.95, 1 - 1e-6, 1 - 1e-9}) {
    EXPECT_EQ(added.enough_for(level), known.enough_for(level)) << level;
  }
  for (int n = known.least(); n <= known.most(); ++n) {
    ASSERT_NEAR(added.chance_of(n), known.chance_of(n), 3e-15) << n;
  }
  EXPECT_LT(added.chances().size(), 1.1 * static_cast<double>(known.chances().size()));
}

}  // namespace
}  // namespace drapewright::forecast
