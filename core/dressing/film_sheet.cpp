#include "core/dressing/film_sheet.h"

#include <algorithm>
#include <tuple>

#include "core/base/tolerances.h"
#include "core/geometry/rectangle.h"

namespace drapewright::dressing {
namespace {

double area_of(const supplies::StockItem& sheet) { return *sheet.length_cm * *sheet.width_cm; }

std::optional<geometry::Rectangle> place(const supplies::StockItem& sheet,
                                         std::span<const geometry::Point> wound_points,
                                         double border_cm,
                                         std::span<const geometry::Point> film_points) {
  const double length_cm = *sheet.length_cm - 2 * border_cm;
  const double width_cm = *sheet.width_cm - 2 * border_cm;
  if (length_cm > 0 && width_cm > 0) {
    auto place =
        geometry::place_in_rectangle(wound_points, length_cm, width_cm, tolerance::sheet_fit_cm);
    if (place) {
      place->length_cm += 2 * border_cm;
      place->width_cm += 2 * border_cm;
      return place;
    }
  }
  // Trimmed film may fit where the whole would not.
  return geometry::place_in_rectangle(film_points, *sheet.length_cm, *sheet.width_cm,
                                      tolerance::sheet_slack_cm);
}

}  // namespace

FilmShelf::FilmShelf(const supplies::StockList& stock) {
  const bool costs_known = std::ranges::all_of(stock, [](const supplies::StockItem& item) {
    return item.kind != supplies::Kind::film_sheet || item.unit_cost.has_value();
  });
  for (const supplies::StockItem& item : stock) {
    if (item.kind == supplies::Kind::film_sheet) by_cost_.push_back(&item);
  }
  std::ranges::stable_sort(by_cost_, {}, [&](const supplies::StockItem* item) {
    return std::tuple(costs_known ? *item->unit_cost : 0.0, area_of(*item));
  });
}

std::optional<FilmSheet> FilmShelf::take(std::span<const geometry::Point> wound_points,
                                         double border_cm,
                                         std::span<const geometry::Point> film_points) {
  for (const supplies::StockItem* sheet : by_cost_) {
    if (sheet->available && taken_[sheet] >= *sheet->available) continue;
    const auto where = place(*sheet, wound_points, border_cm, film_points);
    if (!where) continue;
    ++taken_[sheet];
    return FilmSheet{sheet->item, *where};
  }
  return std::nullopt;
}

std::optional<FilmSheet> FilmShelf::take(std::span<const geometry::Point> film_points) {
  // With no wound points there is nothing to add a border to.
  return take(film_points, 0, film_points);
}

const supplies::StockItem* FilmShelf::largest() const {
  const auto found = std::ranges::max_element(
      by_cost_, {}, [](const supplies::StockItem* item) { return area_of(*item); });
  return found == by_cost_.end() ? nullptr : *found;
}

}  // namespace drapewright::dressing
