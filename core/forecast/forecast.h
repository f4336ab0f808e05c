#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/base/progress.h"
#include "core/forecast/band.h"
#include "core/forecast/caseload.h"
#include "core/forecast/order.h"
#include "core/forecast/recorded.h"
#include "core/forecast/settings.h"
#include "core/forecast/shelf.h"
#include "core/forecast/stock.h"

namespace drapewright::forecast {

struct ItemForecast {
  std::string item;
  supplies::Kind kind = supplies::Kind::other;
  std::vector<Band> weeks;  ///< use in each week
  std::vector<int> enough;  ///< for each week, with the service level: what to pick for it
  Band total;               ///< use in all of them
  std::optional<double> unit_cost;
  std::optional<double> cost;          ///< of the mean use
  std::optional<ShelfForecast> shelf;  ///< nothing for what is not on the stock list
  std::optional<Order> order;
};

struct Forecast {
  int first_day = 0;
  int weeks = 0;
  double service_level = 0;
  int patients = 0;  ///< under therapy
  double new_patients_per_week = 0;
  int profiles = 0;  ///< chosen cases that new patients are like; 0: they are like the present ones
  std::vector<ItemForecast> items;
  double cost = 0;              ///< of all items that have a cost
  double order_cost = 0;        ///< of all orders that have one
  double cost_per_patient = 0;  ///< of those that are there now and those that are to come
  RecordedUse recorded;
  std::vector<dressing::Finding> findings;
};

/// Works out every item's use, week by week, and what becomes of the shelf. Deterministic.
/// @param stock  what the stores have; empty: use only, with the built-in catalogue's costs
/// @throws InputError for settings or stock out of bounds
/// @throws Cancelled when `progress` was told to stop
Forecast forecast_of(const Caseload& caseload, const RecordedUse& recorded, const Shelf& stock,
                     const Settings& settings, const Progress& progress = {});

/// Every item of the built-in catalogue, none on hand: where a stock list can start from.
Shelf stock_template();

}  // namespace drapewright::forecast
