#include "app/desktop/stores/what_if_table.h"

#include <algorithm>
#include <functional>

#include "app/wording/spoken.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

using forecast::Forecast;
using forecast::ItemForecast;
using Cell = NumberTable::Cell;
/// Nothing where a forecast has no such figure.
using Figure = std::optional<double>;

class SideBySide {
 public:
  SideBySide(const WhatIfResult& result, bool differences)
      : result_(result), differences_(differences) {
    table_.titles << spoken("Item") << spoken("Figure");
    for (const auto& column : result.columns) table_.titles << column.title;
  }

  void add_total(const QString& figure, const std::function<Figure(const Forecast&)>& of) {
    std::vector<Figure> figures;
    for (const auto& column : result_.columns) figures.push_back(of(column.forecast));
    add(spoken("All items"), figure, 2, figures);
  }

  /// A row for each item that any of them has.
  void add_items(const QString& figure, int decimals,
                 const std::function<Figure(const ItemForecast&)>& of) {
    for (const std::string& name : items()) {
      std::vector<Figure> figures;
      for (const auto& column : result_.columns) {
        const auto* item = item_named(column.forecast, name);
        figures.push_back(item != nullptr ? of(*item) : Figure(0));
      }
      add(QString::fromStdString(supplies::shown_name(name)), figure, decimals, figures);
    }
  }

  NumberTable taken() { return std::move(table_); }

 private:
  void add(const QString& item, const QString& figure, int decimals,
           const std::vector<Figure>& figures) {
    if (std::ranges::none_of(figures, &Figure::has_value)) return;
    std::vector<Cell> row{{item}, {figure}};
    for (std::size_t i = 0; i < figures.size(); ++i) {
      Figure shown = figures[i];
      if (differences_ && i > 0 && shown) {
        shown = figures[0] ? Figure(*shown - *figures[0]) : Figure();
      }
      row.push_back(shown ? Cell{*shown, decimals} : Cell{QString("-")});
    }
    table_.rows.push_back(std::move(row));
  }

  static const ItemForecast* item_named(const Forecast& forecast, const std::string& name) {
    const auto found = std::ranges::find(forecast.items, name, &ItemForecast::item);
    return found == forecast.items.end() ? nullptr : &*found;
  }

  std::vector<std::string> items() const {
    std::vector<std::string> names;
    for (const auto& column : result_.columns) {
      for (const ItemForecast& item : column.forecast.items) {
        if (std::ranges::find(names, item.item) == names.end()) names.push_back(item.item);
      }
    }
    return names;
  }

  const WhatIfResult& result_;
  bool differences_;
  NumberTable table_;
};

template <typename Number>
Figure figure(const std::optional<forecast::Order>& order, Number forecast::Order::*member) {
  return order ? Figure((*order).*member) : Figure();
}

}  // namespace

NumberTable what_if_table(const WhatIfResult& result, bool differences) {
  SideBySide table(result, differences);
  table.add_total(spoken("Expected cost"), [](const Forecast& f) { return f.cost; });
  table.add_total(spoken("Cost a patient"), [](const Forecast& f) { return f.cost_per_patient; });
  table.add_total(spoken("Cost of the orders"), [](const Forecast& f) {
    const bool orders = std::ranges::any_of(
        f.items, [](const ItemForecast& item) { return item.order.has_value(); });
    return orders ? Figure(f.order_cost) : Figure();
  });
  table.add_items(spoken("Expected use"), 1,
                  [](const ItemForecast& item) { return item.total.mean; });
  table.add_items(spoken("Use, 95 % quantile"), 0,
                  [](const ItemForecast& item) { return Figure(item.total.high90); });
  table.add_items(spoken("Take for the first week"), 0,
                  [](const ItemForecast& item) { return Figure(item.enough.front()); });
  table.add_items(spoken("Reorder point"), 0, [](const ItemForecast& item) {
    return figure(item.order, &forecast::Order::reorder_point);
  });
  table.add_items(spoken("To order, pieces"), 0, [](const ItemForecast& item) {
    return figure(item.order, &forecast::Order::quantity);
  });
  return table.taken();
}

QStringList without_cost(const WhatIfResult& result) {
  QStringList names;
  const auto uses = [](const Forecast& forecast, const std::string& name) {
    return std::ranges::any_of(forecast.items, [&](const ItemForecast& item) {
      return item.item == name && item.total.mean > 0;
    });
  };
  for (const auto& column : result.columns) {
    for (const ItemForecast& item : column.forecast.items) {
      const bool counts = item.total.mean > 0 && !item.cost;
      const auto name = QString::fromStdString(supplies::shown_name(item.item));
      if (!counts || uses(result.columns.front().forecast, item.item)) continue;
      if (!names.contains(name)) names << name;
    }
  }
  return names;
}

}  // namespace drapewright::desktop
