#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>

#include "core/dressing/plan.h"

namespace drapewright::dressing {

/// Chooses film sheets from a stock list; remembers what it has handed out, so that two films of
/// one plan do not share the last sheet on the shelf.
class FilmShelf {
 public:
  explicit FilmShelf(const supplies::StockList& stock);

  /// The cheapest sheet that holds the film at some angle (of least area where costs are equal or
  /// not given), where it has to lie, or nothing.
  /// @param wound_points  corner points of the group's wounds
  /// @param border_cm     film wanted around them
  /// @param film_points   corner points of the film after trimming
  /// The untrimmed film is tested against the wounds themselves, on a sheet less the border on
  /// either side: exact, where the drawn film exceeds the true one by its drawing error.
  std::optional<FilmSheet> take(std::span<const geometry::Point> wound_points, double border_cm,
                                std::span<const geometry::Point> film_points);

  /// The same for a film that is given by its own points alone.
  std::optional<FilmSheet> take(std::span<const geometry::Point> film_points);

  /// All film sheets in stock, cheapest first.
  const std::vector<const supplies::StockItem*>& sheets() const { return by_cost_; }
  /// The largest sheet in stock by area, nullptr when there is none.
  const supplies::StockItem* largest() const;

 private:
  std::vector<const supplies::StockItem*> by_cost_;
  std::map<const supplies::StockItem*, int> taken_;
};

}  // namespace drapewright::dressing
