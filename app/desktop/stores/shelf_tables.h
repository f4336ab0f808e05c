#pragma once

#include <optional>
#include <vector>

#include "app/desktop/stores/number_table.h"
#include "app/desktop/stores/shelf_store.h"

namespace drapewright::desktop {

/// What lies on the shelf and what is on order, and which item each row is about.
struct ShelfRows {
  struct Row {
    std::size_t item = 0;
    std::optional<forecast::Lot> lot;  ///< nothing: a delivery, or an item of which none is left
    std::optional<forecast::Delivery> delivery;
  };
  NumberTable table;
  std::vector<Row> rows;
};

/// @param today  day number
ShelfRows shelf_rows(const forecast::Shelf& shelf, int today);

/// The log as it is read, times in the reader's own zone.
NumberTable log_table(const std::vector<Booking>& log);

/// "lot A, use by 2026-04-01"; a lot without a name or a date is called so.
QString lot_in_words(const forecast::Lot& lot);

}  // namespace drapewright::desktop
