#pragma once

#include <array>
#include <functional>
#include <optional>
#include <vector>

#include "core/forecast/band.h"
#include "core/forecast/quantity.h"
#include "core/forecast/stock.h"

namespace drapewright::forecast {

/// Use from one day of the forecast up to another (not part of it).
using UseBetween = std::function<Quantity(int from, int to)>;

/// The shelf at the end of a week. Means, and the distribution of what is left.
struct ShelfWeek {
  double received = 0;
  double used = 0;
  double short_of = 0;  ///< asked for and not there: borrowed elsewhere, never delivered later
  double wasted = 0;    ///< past its date
  Quantity left;
  Band band;           ///< of what is left: what a chart draws
  double run_out = 0;  ///< chance that something was short by the end of this week
};

/// The chances with which a run-out date is told: its middle, half of all, nine in ten.
inline constexpr std::array<double, 5> run_out_chances{0.05, 0.25, 0.5, 0.75, 0.95};

struct ShelfForecast {
  double start = 0;  ///< on the shelf on the first day, with what is past its date
  double wasted_at_start = 0;
  std::vector<ShelfWeek> weeks;
  double received = 0, used = 0, short_of = 0, wasted = 0, left = 0;  ///< over all of it, means
  /// A delivery that expires before what is already there: its waste comes out too low.
  bool out_of_order = false;

  /// The days, counted from 0, by whose end something was short with each of `run_out_chances`;
  /// only as many as lie within the forecast.
  std::vector<int> run_out_days;

  /// The end of the first week by which something was short with at least this chance, counted from
  /// 1; nothing where that is beyond the forecast.
  std::optional<int> run_out_week(double chance) const;
};

/// Follows one item's shelf from delivery to delivery and from expiry to expiry, first expired
/// first out. Exact up to the first of them; after it, what was asked for before stands for all
/// that is known of the patients (docs/forecast.md says how far that is from the truth).
ShelfForecast follow_shelf(const ShelfItem& item, int first_day, int weeks, const UseBetween& use);

}  // namespace drapewright::forecast
