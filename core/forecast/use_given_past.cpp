#include "core/forecast/use_given_past.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace drapewright::forecast {
namespace {

/// Correlations below it are rounding.
constexpr double least_correlation = 1e-7;
/// A normal start must leave the use some room; the fit finds the rest.
constexpr double most_correlation = 0.99;
/// More counts than this together are not fitted one by one: sums of so many are nearly normal.
constexpr std::size_t most_fitted = 40000;
constexpr int most_rounds = 60;
constexpr double good_enough = 1e-7;  ///< of chance, out of place in a round
/// So many rows to a standard deviation of what was used before are as good as one for each count.
constexpr double rows_per_spread = 8;

double covariance_of(const Quantity& before, const Quantity& next, const Quantity& both) {
  return (both.variance() - before.variance() - next.variance()) / 2;
}

}  // namespace

UseGivenPast::UseGivenPast(const Quantity& before, const Quantity& next, const Quantity& both)
    : before_(before), next_(next) {
  const double spreads = before.spread() * next.spread();
  const double covariance = covariance_of(before, next, both);
  if (!(spreads > 0) || std::fabs(covariance) < least_correlation * spreads) return;
  const bool fitted = before.chances().size() * next.chances().size() <= most_fitted;
  if (!fitted) block_ = std::max(1, static_cast<int>(before.spread() / rows_per_spread));
  start_from_normal(covariance);
  if (fitted) {
    fit(both);
  } else {
    keep_mean();
  }
  take_rows();
}

const Quantity& UseGivenPast::after(double used) const {
  if (rows_.empty()) return next_;
  const double row = (used - before_.least()) / block_;
  const auto last = static_cast<double>(rows_.size() - 1);
  return rows_[static_cast<std::size_t>(std::clamp(block_ == 1 ? row + 0.5 : row, 0.0, last))];
}

/// For normal quantities the use has the mean m + k/v (u - mean of u) and the variance s^2 - k^2/v,
/// where v is the variance before, s^2 that of the use and k their covariance: the use's own
/// chances, times exp of a slope and of a bend.
void UseGivenPast::start_from_normal(double covariance) {
  const auto& past = before_.chances();
  const auto& uses = next_.chances();
  const double most = most_correlation * before_.spread() * next_.spread();
  const double k = std::clamp(covariance, -most, most);
  const double inside = next_.variance() - k * k / before_.variance();
  const double bend = 1 / inside - 1 / next_.variance();
  const double slope = k / (before_.variance() * inside);
  const auto block = static_cast<std::size_t>(block_);
  const std::size_t count = (past.size() + block - 1) / block;
  std::vector<double> powers(uses.size());
  for (std::size_t row = 0; row < count; ++row) {
    const std::size_t first = row * block, end = std::min(past.size(), first + block);
    weights_.push_back(std::accumulate(past.begin() + static_cast<std::ptrdiff_t>(first),
                                       past.begin() + static_cast<std::ptrdiff_t>(end), 0.0));
    const double used = before_.least() + static_cast<double>(first + end - 1) / 2;
    double highest = -1e300, total = 0;
    for (std::size_t i = 0; i < uses.size(); ++i) {
      const double off = next_.least() + static_cast<double>(i) - next_.mean();
      powers[i] = slope * (used - before_.mean()) * off - bend * off * off / 2;
      if (uses[i] > 0) highest = std::max(highest, powers[i]);
    }
    for (std::size_t i = 0; i < uses.size(); ++i) {
      const double one = uses[i] > 0 ? uses[i] * std::exp(powers[i] - highest) : 0;
      chances_.push_back(one);
      total += one;
    }
    for (std::size_t i = 0; i < uses.size(); ++i) chance(row, i) *= weights_.back() / total;
  }
}

void UseGivenPast::fit(const Quantity& both) {
  for (int round = 0; round < most_rounds; ++round) {
    scale_columns(both);
    scale_diagonals();
    if (scale_rows() < good_enough) return;
  }
}

/// A column: all that have used equally many by the end of the stretch.
void UseGivenPast::scale_columns(const Quantity& both) {
  const std::size_t uses = next_.chances().size();
  std::vector<double> factors(weights_.size() + uses - 1, 0.0);
  for (std::size_t row = 0; row < weights_.size(); ++row) {
    for (std::size_t i = 0; i < uses; ++i) factors[row + i] += chance(row, i);
  }
  for (std::size_t column = 0; column < factors.size(); ++column) {
    const int count = before_.least() + next_.least() + static_cast<int>(column);
    if (factors[column] > 0) factors[column] = both.chance_of(count) / factors[column];
  }
  for (std::size_t row = 0; row < weights_.size(); ++row) {
    for (std::size_t i = 0; i < uses; ++i) chance(row, i) *= factors[row + i];
  }
}

/// A diagonal: all that use equally many in the stretch.
void UseGivenPast::scale_diagonals() {
  const auto& uses = next_.chances();
  std::vector<double> factors(uses.size(), 0.0);
  for (std::size_t row = 0; row < weights_.size(); ++row) {
    for (std::size_t i = 0; i < uses.size(); ++i) factors[i] += chance(row, i);
  }
  for (std::size_t i = 0; i < uses.size(); ++i) {
    if (factors[i] > 0) factors[i] = uses[i] / factors[i];
  }
  for (std::size_t row = 0; row < weights_.size(); ++row) {
    for (std::size_t i = 0; i < uses.size(); ++i) chance(row, i) *= factors[i];
  }
}

/// A row: all that had used equally many before. @return how much chance was out of place
double UseGivenPast::scale_rows() {
  const std::size_t uses = next_.chances().size();
  double misplaced = 0;
  for (std::size_t row = 0; row < weights_.size(); ++row) {
    double total = 0;
    for (std::size_t i = 0; i < uses; ++i) total += chance(row, i);
    misplaced += std::fabs(total - weights_[row]);
    if (total <= 0) continue;
    for (std::size_t i = 0; i < uses; ++i) chance(row, i) *= weights_[row] / total;
  }
  return misplaced;
}

/// The tilted rows of a skewed use miss its mean by a little: all of them are tilted back.
void UseGivenPast::keep_mean() {
  const std::size_t uses = next_.chances().size();
  for (int round = 0; round < 2; ++round) {
    double mean = 0, squares = 0;
    for (std::size_t row = 0; row < weights_.size(); ++row) {
      for (std::size_t i = 0; i < uses; ++i) {
        const double off = next_.least() + static_cast<double>(i) - next_.mean();
        mean += chance(row, i) * off;
        squares += chance(row, i) * off * off;
      }
    }
    for (std::size_t i = 0; i < uses; ++i) {
      const double off = next_.least() + static_cast<double>(i) - next_.mean();
      const double factor = std::exp(-mean / squares * off);
      for (std::size_t row = 0; row < weights_.size(); ++row) chance(row, i) *= factor;
    }
    scale_rows();
  }
}

void UseGivenPast::take_rows() {
  const std::size_t uses = next_.chances().size();
  for (std::size_t row = 0; row < weights_.size(); ++row) {
    const auto first = chances_.begin() + static_cast<std::ptrdiff_t>(row * uses);
    const auto last = first + static_cast<std::ptrdiff_t>(uses);
    // Nothing is known of what has no chance to be seen.
    const bool known = std::accumulate(first, last, 0.0) > 0;
    rows_.push_back(known ? Quantity(next_.least(), {first, last}) : next_);
  }
  chances_.clear();
}

}  // namespace drapewright::forecast
