#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/supplies/stock_item.h"

namespace drapewright::forecast {

// Dates on a shelf are day numbers of the calendar (core/base/calendar.h).

/// What lies on the shelf with one expiry date, which is the last day on which it may be used.
struct Lot {
  int quantity = 0;
  std::optional<int> expires;
  std::string name;  ///< may be empty
  friend bool operator==(const Lot&, const Lot&) = default;
};

/// What is on order.
struct Delivery {
  int due = 0;
  int quantity = 0;
  std::optional<int> expires;
  friend bool operator==(const Delivery&, const Delivery&) = default;
};

/// All that the stores know of an item.
struct ShelfItem {
  std::string item;
  supplies::Kind kind = supplies::Kind::other;
  std::vector<Lot> lots;
  std::vector<Delivery> deliveries;
  int pack_size = 1;
  double lead_days = 0;
  double lead_spread_days = 0;  ///< standard deviation
  std::optional<double> unit_cost;
  int minimum = 0;  ///< that is to be on the shelf at all times
  friend bool operator==(const ShelfItem&, const ShelfItem&) = default;
};

using Shelf = std::vector<ShelfItem>;

/// @throws InputError that names the item, for what no shelf can hold: a negative count, a pack of
///         none, a lead time or cost that is not finite or below 0
void check(const ShelfItem& item);

}  // namespace drapewright::forecast
