#pragma once

#include <optional>

namespace drapewright::desktop {

/// A rate of extra dressings that was taken over from what the cases recorded, kept from one run of
/// the program to the next.
struct TakenOverRate {
  double per_week = 0;
  double before = 0;  ///< a week: the rate to go back to, itself not from a record
};

/// Nothing where none is in effect, or where what was kept is no rate.
std::optional<TakenOverRate> kept_rate();
/// Forgets it where there is none.
void keep_rate(const std::optional<TakenOverRate>& rate);

/// Whether two rates are the same in a field that shows two decimals.
bool is_same_rate(double a, double b);

}  // namespace drapewright::desktop
