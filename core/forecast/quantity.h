#pragma once

#include <span>
#include <vector>

namespace drapewright::forecast {

/// How many pieces of something: a distribution over whole numbers, none below 0. Sums are
/// convolutions, so there is no sampling noise; all that is not exact is rounding and a tail of
/// less than `tail` at either end, which is counted at the outermost number that is kept.
class Quantity {
 public:
  static constexpr double tail = 1e-15;

  /// Certainly none.
  Quantity() : chances_{1} {}
  /// Certainly `count`. @pre count >= 0
  static Quantity exactly(int count);
  /// @param chances  of `least`, `least` + 1, ...; each >= 0, not all 0; scaled to a sum of 1
  Quantity(int least, std::vector<double> chances);

  int least() const { return least_; }
  int most() const { return least_ + static_cast<int>(chances_.size()) - 1; }
  const std::vector<double>& chances() const { return chances_; }  ///< of least(), least() + 1, ...

  double chance_of(int count) const;
  double chance_of_at_most(int count) const;
  double mean() const;
  double variance() const;
  double spread() const;  ///< standard deviation
  /// The least count that is enough with a chance of at least `level`. @pre 0 < level < 1
  int enough_for(double level) const;
  /// How many are short on average where `available` are at hand: E max(0, X - available).
  double expected_short(int available) const;

  /// `factor` of each: the distribution of factor x X. @pre factor >= 0
  Quantity times(int factor) const;

  friend bool operator==(const Quantity&, const Quantity&) = default;

 private:
  void trim();

  int least_ = 0;
  std::vector<double> chances_;
};

/// Of independent quantities.
Quantity sum(const Quantity& a, const Quantity& b);
/// The smallest are added first, which keeps the work down. Empty: none.
Quantity sum(std::vector<Quantity> parts);
/// The sum of `count` independent ones that are distributed like `one`. @pre count >= 0
Quantity repeated(const Quantity& one, int count);

/// One of several, each with its share.
class Mixture {
 public:
  void add(double share, const Quantity& quantity, int more = 0);
  bool is_empty() const { return total_ <= 0; }
  /// @pre something was added
  Quantity taken() const;

 private:
  double total_ = 0;
  std::vector<double> chances_;  ///< of 0, 1, ...
};

/// @param mean >= 0 @throws InputError for anything else, and above 1e6
Quantity poisson(double mean);
/// By mean and variance. @pre variance > mean > 0 @throws InputError for anything else
Quantity negative_binomial(double mean, double variance);
/// A sum of as many independent `one` as Poisson says (Panjer's recursion).
Quantity compound_poisson(double mean, const Quantity& one);
/// A time in whole days with this mean and spread, gamma distributed; certain where spread is 0.
Quantity lead_time(double mean_days, double spread_days);
/// z with P(Z <= z) = level for a standard normal Z. @pre 0 < level < 1
double normal_quantile(double level);

}  // namespace drapewright::forecast
