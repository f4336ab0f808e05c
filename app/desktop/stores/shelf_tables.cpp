#include "app/desktop/stores/shelf_tables.h"

#include <QDateTime>
#include <QTimeZone>
#include <algorithm>

#include "app/wording/spoken.h"
#include "core/base/calendar.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

using forecast::Delivery;
using forecast::Lot;
using forecast::Shelf;
using forecast::ShelfItem;
using Cell = NumberTable::Cell;

/// So long before its date a lot is pointed out: two rounds of a weekly review, and one more.
constexpr int days_to_point_out = 21;

Cell text(const std::string& value) { return {QString::fromStdString(value)}; }
Cell date(const std::optional<int>& day) { return text(day ? date_of_day(*day) : std::string()); }
const Cell none{QString()};

int in_date(const ShelfItem& item, int today) {
  int count = 0;
  for (const Lot& lot : item.lots) {
    if (!lot.expires || *lot.expires >= today) count += lot.quantity;
  }
  return count;
}

QString remark_on(const Lot& lot, int today) {
  if (!lot.expires || lot.quantity == 0) return {};
  const int days = *lot.expires - today;
  if (days < 0) return spoken("past its date");
  if (days > days_to_point_out) return {};
  return days == 0 ? spoken("last day today") : spoken_count(days, "{1} day left", "{1} days left");
}

class ShelfLister {
 public:
  explicit ShelfLister(int today) : today_(today) {
    listed_.table.titles = {spoken("Item"),         spoken("Lot"), spoken("Use by"),
                            spoken("On the shelf"), spoken("Due"), spoken("On order"),
                            spoken("Remark")};
  }

  void add(std::size_t index, const ShelfItem& item) {
    const int there = in_date(item, today_);
    if (there < item.minimum || there == 0) {
      add({.item = index, .lot = {}, .delivery = {}},
          {text(supplies::shown_name(item.item)),
           none,
           none,
           {there},
           none,
           none,
           {there == 0 ? spoken("none in date")
                       : spoken("below the minimum of {1}", {item.minimum})}});
    }
    for (const Lot& lot : item.lots) {
      if (lot.quantity == 0) continue;
      add({.item = index, .lot = lot, .delivery = {}}, {text(supplies::shown_name(item.item)),
                                                        text(lot.name),
                                                        date(lot.expires),
                                                        {lot.quantity},
                                                        none,
                                                        none,
                                                        {remark_on(lot, today_)}});
    }
    for (const Delivery& delivery : item.deliveries) {
      add({.item = index, .lot = {}, .delivery = delivery},
          {text(supplies::shown_name(item.item)),
           none,
           date(delivery.expires),
           none,
           date(delivery.due),
           {delivery.quantity},
           {delivery.due < today_ ? spoken("overdue") : QString()}});
    }
  }

  ShelfRows taken() { return std::move(listed_); }

 private:
  void add(ShelfRows::Row row, std::vector<Cell> cells) {
    listed_.rows.push_back(std::move(row));
    listed_.table.rows.push_back(std::move(cells));
  }

  int today_;
  ShelfRows listed_;
};

}  // namespace

ShelfRows shelf_rows(const Shelf& shelf, int today) {
  ShelfLister lister(today);
  for (std::size_t i = 0; i < shelf.size(); ++i) lister.add(i, shelf[i]);
  return lister.taken();
}

NumberTable log_table(const std::vector<Booking>& log) {
  NumberTable table{{spoken("When"), spoken("By"), spoken("Item"), spoken("Lot"), spoken("Pieces"),
                     spoken("Note")},
                    {}};
  for (const Booking& line : log) {
    auto at = QDateTime::fromString(line.at, "yyyy-MM-dd HH:mm:ss");
    at.setTimeSpec(Qt::UTC);
    const QString when = at.isValid() ? at.toLocalTime().toString("yyyy-MM-dd HH:mm:ss") : line.at;
    table.rows.push_back({{when},
                          {line.who},
                          text(supplies::shown_name(line.item.toStdString())),
                          {line.lot},
                          {line.quantity},
                          {line.reason}});
  }
  return table;
}

QString lot_in_words(const Lot& lot) {
  const std::string name =
      lot.name.empty() ? say("lot without a name") : say("lot {1}", {lot.name});
  if (!lot.expires) return spoken("{1}, no date", {name});
  return spoken("{1}, use by {2}", {name, date_of_day(*lot.expires)});
}

}  // namespace drapewright::desktop
