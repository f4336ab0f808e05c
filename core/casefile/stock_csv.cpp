#include "core/casefile/stock_csv.h"

#include <algorithm>
#include <map>

#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/casefile/csv.h"

namespace drapewright::casefile {
namespace {

using forecast::Delivery;
using forecast::Lot;
using forecast::ShelfItem;

const std::vector<std::string_view> columns{
    "item",      "kind",      "on_hand",          "lot",       "expires", "on_order", "due",
    "pack_size", "lead_days", "lead_spread_days", "unit_cost", "minimum"};

constexpr const char* kinds = term("filler_sheet, film_sheet, port, canister, battery or other");

class StockReader {
 public:
  StockReader(std::string_view text, const std::string& file)
      : table_(text, file, columns, {"item", "on_hand"}) {}

  forecast::Shelf read() {
    for (std::size_t row = 0; row < table_.rows(); ++row) read(row);
    return std::move(shelf_);
  }

 private:
  void read(std::size_t row) {
    const std::string name = table_.text(row, "item");
    if (name.empty()) throw table_.fault(row, "item", say("the item has no name"), say("a name"));
    const auto [at, is_new] = places_.try_emplace(name, shelf_.size());
    if (is_new) shelf_.push_back({.item = name});
    ShelfItem& item = shelf_[at->second];
    read_item(row, name, item);
    read_lot(row, item);
    read_delivery(row, item);
  }

  void read_item(std::size_t row, const std::string& name, ShelfItem& item) {
    if (const std::string word = table_.text(row, "kind"); !word.empty()) {
      const auto kind = supplies::kind_named(word);
      if (!kind) {
        throw table_.fault(row, "kind", say("'{1}' is no kind of item", {word}), say(kinds));
      }
      set(row, "kind", name, *kind, item.kind);
    }
    if (const auto packs = table_.count(row, "pack_size")) {
      if (*packs < 1)
        throw table_.fault(row, "pack_size", say("a pack holds nothing"), say("1 or more"));
      set(row, "pack_size", name, *packs, item.pack_size);
    }
    constexpr double most_days = 3660;
    if (const auto days = table_.number(row, "lead_days", most_days)) {
      set(row, "lead_days", name, *days, item.lead_days);
    }
    if (const auto days = table_.number(row, "lead_spread_days", most_days)) {
      set(row, "lead_spread_days", name, *days, item.lead_spread_days);
    }
    if (const auto cost = table_.number(row, "unit_cost", 1e9)) {
      set(row, "unit_cost", name, std::optional(*cost), item.unit_cost);
    }
    if (const auto least = table_.count(row, "minimum")) {
      set(row, "minimum", name, *least, item.minimum);
    }
  }

  /// The first row that says something of the item as a whole holds for all of its rows.
  template <typename Value>
  void set(std::size_t row, std::string_view column, const std::string& name, Value value,
           Value& member) {
    const auto [at, is_new] = said_.try_emplace({name, std::string(column)}, row);
    if (!is_new && member != value) {
      throw table_.fault(row, column, say("it contradicts row {1}", {at->second + 2}),
                         say("one value for every row of {1}", {name}));
    }
    member = value;
  }

  void read_lot(std::size_t row, ShelfItem& item) {
    const auto quantity = table_.count(row, "on_hand");
    const std::string lot = table_.text(row, "lot");
    if (!quantity && !lot.empty()) {
      throw table_.fault(row, "on_hand", say("lot {1} has no count", {lot}),
                         say("how many are on hand"));
    }
    if (quantity) item.lots.push_back({*quantity, table_.day(row, "expires"), lot});
  }

  void read_delivery(std::size_t row, ShelfItem& item) {
    const auto quantity = table_.count(row, "on_order");
    const auto due = table_.day(row, "due");
    if (!quantity && due) {
      throw table_.fault(row, "on_order", say("a delivery has no count"),
                         say("how many are on order"));
    }
    if (quantity && *quantity > 0 && !due) {
      throw table_.fault(row, "due", say("a delivery has no day"), say("YYYY-MM-DD"));
    }
    if (!quantity || !due) return;
    if (table_.count(row, "on_hand")) {
      throw table_.fault(row, "on_order", say("a lot and a delivery share a row"),
                         say("a row for each"));
    }
    item.deliveries.push_back({*due, *quantity, table_.day(row, "expires")});
  }

  CsvTable table_;
  forecast::Shelf shelf_;
  std::map<std::string, std::size_t> places_;
  std::map<std::pair<std::string, std::string>, std::size_t> said_;  ///< item, column: row
};

std::string date(const std::optional<int>& day) { return day ? date_of_day(*day) : std::string(); }

void write_rows(const ShelfItem& item, std::string& out) {
  const auto row = [&](const std::string& on_hand, const std::string& lot,
                       const std::string& expires, const std::string& on_order,
                       const std::string& due) {
    out += csv_line({item.item, std::string(supplies::name_of(item.kind)), on_hand, lot, expires,
                     on_order, due, std::to_string(item.pack_size), plain_short(item.lead_days, 6),
                     plain_short(item.lead_spread_days, 6),
                     item.unit_cost ? plain_short(*item.unit_cost, 6) : "",
                     std::to_string(item.minimum)});
  };
  for (const Lot& lot : item.lots) {
    row(std::to_string(lot.quantity), lot.name, date(lot.expires), "", "");
  }
  for (const Delivery& delivery : item.deliveries) {
    row("", "", date(delivery.expires), std::to_string(delivery.quantity), date(delivery.due));
  }
  if (item.lots.empty() && item.deliveries.empty()) row("", "", "", "", "");
}

}  // namespace

forecast::Shelf shelf_from_csv(std::string_view text, const std::string& file) {
  return StockReader(text, file).read();
}

std::string shelf_to_csv(const forecast::Shelf& shelf) {
  std::string out = csv_line(std::vector<std::string>(columns.begin(), columns.end()));
  for (const ShelfItem& item : shelf) write_rows(item, out);
  return out;
}

}  // namespace drapewright::casefile
