#pragma once

#include <vector>

#include "core/forecast/quantity.h"
#include "core/forecast/use_given_past.h"

namespace drapewright::forecast {

/// What may have become of a shelf by a day. Everything leaves it in the order of its dates, so one
/// number says all about it: how many have gone, used or wasted. Beside it stands how many have
/// been asked for, since what is asked for next hangs together with that; the two differ where
/// something was wasted or short.
class ShelfState {
 public:
  /// @param most      that can ever lie on the shelf
  /// @param in_all    asked for over all the time that is followed
  ShelfState(int most, const Quantity& in_all);

  struct Served {
    double used = 0;
    double short_of = 0;
  };
  /// Hands out what is asked for in a stretch, as far as it is there. Means.
  /// @param received  up to now, with what was there at the start
  /// @param asked     since the first day, up to the end of the stretch
  Served serve(const UseGivenPast& use, const Quantity& asked, int received);

  /// Takes off the shelf what is past its date. @return how many are wasted on average
  double expire(int gone_at_least);

  Quantity left(int received) const;
  double been_short() const;  ///< the chance that something was short up to now

 private:
  struct Chances {
    double never_short = 0;
    double been_short = 0;
    double asked = 0;  ///< on average, times the chance
    double both() const { return never_short + been_short; }
    void add(double share, const Chances& other, double asked_more) {
      never_short += share * other.never_short;
      been_short += share * other.been_short;
      asked += share * (other.asked + asked_more * other.both());
    }
  };
  /// Counts of pieces asked for that are not told apart, by the end of a stretch.
  struct Bins {
    double from = 0;
    double width = 1;
  };

  Bins bins_for(const Quantity& asked) const;
  std::size_t bin_of(double asked, const Bins& bins) const;
  Served serve_from(std::size_t gone, const Chances& now, const Quantity& wanted, const Bins& bins,
                    std::vector<Chances>& after) const;
  std::size_t gone_counts() const { return chances_.size() / bins_; }

  std::size_t bins_;
  std::vector<Chances> chances_;  ///< by what has gone, and for each by what was asked for
};

}  // namespace drapewright::forecast
