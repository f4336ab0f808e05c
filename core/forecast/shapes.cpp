// The distributions that are known by a formula.
#include <algorithm>
#include <boost/math/distributions/gamma.hpp>
#include <boost/math/distributions/negative_binomial.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/poisson.hpp>
#include <cmath>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/forecast/quantity.h"

namespace drapewright::forecast {
namespace {

/// The recursion starts from the chance of none, which may be far too small to be written down: it
/// runs on a scale of its own, which is changed whenever a number grows beyond this.
constexpr double largest_on_scale = 1e250;
constexpr double next_scale = 1e-250;
constexpr double largest_mean = 1e6;
constexpr double vanishing = 1e-20;  // far below the tail that is folded in

/// The chances of a known distribution between its outermost tails.
template <typename Distribution>
Quantity tabulated(const Distribution& known, double mean, double variance) {
  // Wide enough for any of these shapes: what is beyond is trimmed to the tail that is allowed.
  const double reach = 12 * std::sqrt(variance) + 40;
  const int first = static_cast<int>(std::max(0.0, std::floor(mean - reach)));
  const int last = static_cast<int>(std::ceil(mean + reach + 20 * variance / mean));
  std::vector<double> chances;
  for (int n = first; n <= last; ++n) chances.push_back(boost::math::pdf(known, n));
  return Quantity(first, std::move(chances));
}

[[noreturn]] void refuse(const char* problem, double value, const std::string& expected) {
  throw InputError(say(problem, {format_short(value, 6)}), expected);
}

/// p(n) = m / n times the sum of j g(j) p(n - j) over j.
/// @pre `one` is never none: those that are count for nothing
Quantity panjer(double mean, const Quantity& one) {
  const double centre = mean * one.mean();
  const double variance = mean * (one.variance() + one.mean() * one.mean());
  // The sum reaches its tail here, and then some.
  const auto end =
      static_cast<int>(std::ceil(centre + 14 * std::sqrt(variance) + 20.0 * one.most()));
  std::vector<double> weights;
  for (int j = one.least(); j <= one.most(); ++j) weights.push_back(mean * j * one.chance_of(j));
  std::vector<double> chances{1.0};
  for (int n = 1; n <= end; ++n) {
    double next = 0;
    for (int j = one.least(); j <= std::min(n, one.most()); ++j) {
      next += weights[static_cast<std::size_t>(j - one.least())] *
              chances[static_cast<std::size_t>(n - j)];
    }
    chances.push_back(next / n);
    if (chances.back() < largest_on_scale) continue;
    for (double& chance : chances) chance = chance < 1 ? 0 : chance * next_scale;
  }
  return Quantity(0, std::move(chances));
}

/// Those of `one` that are not none. @pre one.most() > 0
Quantity some_of(const Quantity& one) {
  if (one.least() > 0) return one;
  return Quantity(1, {one.chances().begin() + 1, one.chances().end()});
}

}  // namespace

Quantity poisson(double mean) {
  if (!(mean >= 0 && mean <= largest_mean)) {
    refuse(term("the mean of a Poisson distribution is {1}"), mean, say("0 to 1 000 000"));
  }
  if (mean == 0) return {};
  // From the likeliest count to either side, each chance by the one before: many times faster than
  // the formula for each.
  const int mode = static_cast<int>(mean);
  const double highest = boost::math::pdf(boost::math::poisson_distribution<>(mean), mode);
  std::vector<double> below, chances;
  double chance = highest;
  for (int n = mode; n > 0 && chance > vanishing; --n) below.push_back(chance *= n / mean);
  chances.assign(below.rbegin(), below.rend());
  chances.push_back(highest);
  chance = highest;
  for (int n = mode + 1; chance > vanishing; ++n) chances.push_back(chance *= mean / n);
  return Quantity(mode - static_cast<int>(below.size()), std::move(chances));
}

Quantity negative_binomial(double mean, double variance) {
  if (!(mean > 0 && mean <= largest_mean)) {
    refuse(term("the mean of a negative binomial distribution is {1}"), mean,
           say("above 0 to 1 000 000"));
  }
  if (!(variance > mean && std::isfinite(variance))) {
    refuse(term("the variance of a negative binomial distribution is {1}"), variance,
           say("more than its mean"));
  }
  const double successes = mean * mean / (variance - mean);
  const boost::math::negative_binomial_distribution<> known(successes, mean / variance);
  return tabulated(known, mean, variance);
}

Quantity compound_poisson(double mean, const Quantity& one) {
  if (!(mean >= 0 && mean <= largest_mean)) {
    refuse(term("the mean of a Poisson distribution is {1}"), mean, say("0 to 1 000 000"));
  }
  if (mean == 0 || one.most() == 0) return {};
  return panjer(mean * (1 - one.chance_of(0)), some_of(one));
}

Quantity lead_time(double mean_days, double spread_days) {
  if (!(mean_days >= 0 && mean_days <= 3660))
    refuse(term("the lead time is {1}"), mean_days, say("0 to 3660 days"));
  if (!(spread_days >= 0 && spread_days <= 3660)) {
    refuse(term("the spread of the lead time is {1}"), spread_days, say("0 to 3660 days"));
  }
  if (spread_days == 0 || mean_days == 0) {
    return Quantity::exactly(static_cast<int>(std::ceil(mean_days)));
  }
  const double shape = mean_days * mean_days / (spread_days * spread_days);
  const boost::math::gamma_distribution<> known(shape, mean_days / shape);
  const int last = static_cast<int>(std::ceil(boost::math::quantile(known, 1 - 1e-9)));
  std::vector<double> chances;
  double below = 0;
  for (int day = 0; day <= last; ++day) {
    const double up_to_here = boost::math::cdf(known, day + 0.5);
    chances.push_back(up_to_here - below);
    below = up_to_here;
  }
  return Quantity(0, std::move(chances));
}

double normal_quantile(double level) {
  return boost::math::quantile(boost::math::normal_distribution<>(), level);
}

}  // namespace drapewright::forecast
