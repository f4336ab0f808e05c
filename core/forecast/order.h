#pragma once

#include <optional>
#include <string>

#include "core/forecast/quantity.h"
#include "core/forecast/shelf.h"

namespace drapewright::forecast {

/// R = d L + z sqrt(L s^2 + d^2 sL^2): the textbook's reorder point for a use of d a day with
/// spread s, a lead time of L days with spread sL and the standard normal quantile z of the service
/// level.
/// @pre nothing negative but z
double reorder_point(double daily_mean, double daily_spread, double lead_days,
                     double lead_spread_days, double z);

/// Use over a lead time that is itself uncertain, and some days on top of it.
Quantity use_over_lead_time(const UseBetween& use, const Quantity& lead_days, int more_days);

/// What to order now, and how that was worked out. The same level twice: by the textbook's formula
/// and by the exact distribution; the exact one decides.
struct Order {
  double daily_mean = 0;
  double daily_spread = 0;
  double textbook_reorder_point = 0;  ///< for the lead time
  int reorder_point = 0;              ///< exact, for the lead time
  double textbook_need = 0;           ///< for lead time and review
  int need = 0;                       ///< exact, for lead time and review, minimum added
  int on_hand = 0;                    ///< not past its date
  int on_order = 0;                   ///< due by the end of that time
  int expiring = 0;                   ///< waste expected by the end of that time, rounded up
  int packs = 0;
  int textbook_packs = 0;
  int quantity = 0;  ///< packs x pack size
  std::optional<double> cost;
  std::string arithmetic;  ///< in words
};

Order order_for(const ShelfItem& item, int first_day, int review_days, double service_level,
                const UseBetween& use);

}  // namespace drapewright::forecast
