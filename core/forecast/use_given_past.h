#pragma once

#include <vector>

#include "core/forecast/quantity.h"

namespace drapewright::forecast {

/// What will be used in a stretch of time, for each count that may have been used before it. A
/// course that still runs has used much and will use more; one that ended early has done neither.
///
/// Of all joint distributions in which the use before, the use in the stretch and the use up to its
/// end each have their known distribution, the one that assumes least: a(u) b(u + d) c(d) times the
/// independent one (iterative proportional fitting: Deming, Stephan, Ann Math Stat 1940;11:427,
/// from memory). Where there are too many counts for that the factors are those of a normal
/// distribution with the same means, variances and covariance.
class UseGivenPast {
 public:
  /// @param before  used from day 0 to the start of the stretch
  /// @param next    used in the stretch
  /// @param both    used from day 0 to its end
  UseGivenPast(const Quantity& before, const Quantity& next, const Quantity& both);

  /// The use in the stretch after so much was used; a mean will do, and is rounded.
  const Quantity& after(double used) const;

 private:
  void start_from_normal(double covariance);
  void fit(const Quantity& both);
  void scale_columns(const Quantity& both);
  void scale_diagonals();
  double scale_rows();
  void keep_mean();
  void take_rows();
  double& chance(std::size_t row, std::size_t next) {
    return chances_[row * next_.chances().size() + next];
  }

  Quantity before_, next_;
  int block_ = 1;                ///< so many counts used before share a row
  std::vector<double> weights_;  ///< chance of each row
  std::vector<double> chances_;  ///< of a row and a use together, row by row
  std::vector<Quantity> rows_;   ///< empty: it does not matter what was used
};

}  // namespace drapewright::forecast
