#pragma once

#include <string>
#include <string_view>

#include "core/forecast/stock.h"

namespace drapewright::casefile {

/// Reads a stock list (docs/file-format.md): one row for each lot and each delivery of an item.
/// What belongs to the item as a whole stands in any of its rows; two rows must not contradict.
/// @throws InputError that names row and column
forecast::Shelf shelf_from_csv(std::string_view text, const std::string& file = {});

/// The same, as it is read back to an equal shelf.
std::string shelf_to_csv(const forecast::Shelf& shelf);

}  // namespace drapewright::casefile
