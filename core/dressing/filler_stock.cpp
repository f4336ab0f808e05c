#include "core/dressing/filler_stock.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "core/base/tolerances.h"

namespace drapewright::dressing {

using supplies::StockItem;
using supplies::StockList;

StockList filler_in_stock(const wound::Case& value) {
  StockList sheets;
  std::ranges::copy_if(
      wound::stock_of(value), std::back_inserter(sheets), [](const StockItem& item) {
        return item.kind == supplies::Kind::filler_sheet && item.available.value_or(1) > 0;
      });
  return sheets;
}

StockList filler_to_cut_from(const wound::Case& value) {
  const StockList all = filler_in_stock(value);
  const auto named = [&](const StockItem& item) {
    return std::ranges::find(value.dressing.filler_items, item.item) !=
           value.dressing.filler_items.end();
  };
  StockList sheets = all;
  std::erase_if(sheets, [&](const StockItem& item) {
    return !named(item) && std::ranges::any_of(of_thickness(all, *item.thickness_cm), named);
  });
  return sheets;
}

std::vector<std::string> unknown_filler_items(const wound::Case& value) {
  const StockList all = filler_in_stock(value);
  std::vector<std::string> unknown;
  std::ranges::copy_if(value.dressing.filler_items, std::back_inserter(unknown),
                       [&](const std::string& name) {
                         return std::ranges::find(all, name, &StockItem::item) == all.end();
                       });
  return unknown;
}

StockList of_thickness(const StockList& sheets, double thickness_cm) {
  StockList found;
  std::ranges::copy_if(sheets, std::back_inserter(found), [&](const StockItem& item) {
    return std::fabs(*item.thickness_cm - thickness_cm) <= tolerance::thinning_cm;
  });
  return found;
}

double nearest_thickness(const StockList& sheets, double thickness_cm) {
  double thickest = 0;
  std::optional<double> enough;
  for (const StockItem& item : sheets) {
    const double t = *item.thickness_cm;
    thickest = std::max(thickest, t);
    if (t >= thickness_cm - tolerance::thinning_cm && (!enough || t < *enough)) enough = t;
  }
  return enough.value_or(thickest);
}

}  // namespace drapewright::dressing
