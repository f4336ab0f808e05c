#include "core/forecast/order.h"

#include <algorithm>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright::forecast {
namespace {

int packs_for(double missing, int pack_size) {
  return static_cast<int>(std::ceil(std::max(0.0, missing) / pack_size - 1e-9));
}

int on_hand(const ShelfItem& item, int first_day) {
  int count = 0;
  for (const Lot& lot : item.lots) {
    if (lot.expires.value_or(first_day) >= first_day) count += lot.quantity;
  }
  return count;
}

int due_within(const ShelfItem& item, int first_day, int days) {
  int count = 0;
  for (const Delivery& delivery : item.deliveries) {
    if (delivery.due < first_day + days) count += delivery.quantity;
  }
  return count;
}

/// What passes its date in that time although all that is asked for is served, rounded up.
int expiring_within(const ShelfItem& item, int first_day, int days, const UseBetween& use) {
  const ShelfForecast shelf = follow_shelf(item, first_day, (days + 6) / 7, use);
  return static_cast<int>(std::ceil(shelf.wasted - shelf.wasted_at_start - 1e-6));
}

/// "12 - 7 = 5 missing, 1 pack of 10 = 10 x 4.50 = 45.00".
std::string missing_in_words(const Order& order, const ShelfItem& item) {
  if (order.packs == 0) return say("enough, nothing to order");
  const int there = order.on_hand + order.on_order - order.expiring;
  std::string text =
      count_of(order.packs, "{2} - {3} = {4} missing, {1} pack of {5} = {6}",
               "{2} - {3} = {4} missing, {1} packs of {5} = {6}",
               {order.need, there, order.need - there, item.pack_size, order.quantity});
  if (order.cost) {
    text += " x " + format_number(*item.unit_cost, 2) + " = " + format_number(*order.cost, 2);
  }
  return text;
}

std::string in_words(const Order& order, const ShelfItem& item, int review_days, double level) {
  const std::vector<Insert> need{format_short(100 * level, 2), format_short(item.lead_days, 1),
                                 review_days, order.need, item.minimum};
  const std::string enough =
      item.minimum > 0
          ? say("Enough with {1} % for {2} d of delivery and {3} d to the next review: {4} (with "
                "the minimum of {5}).",
                need)
          : say("Enough with {1} % for {2} d of delivery and {3} d to the next review: {4}.", need);
  const std::vector<Insert> stock{order.on_hand, order.on_order, order.expiring,
                                  missing_in_words(order, item)};
  return enough + " " +
         (order.expiring > 0 ? say("On hand {1}, on order {2}, expected to expire {3}: {4}.", stock)
                             : say("On hand {1}, on order {2}: {4}.", stock));
}

}  // namespace

double reorder_point(double daily_mean, double daily_spread, double lead_days,
                     double lead_spread_days, double z) {
  return daily_mean * lead_days +
         z * std::sqrt(lead_days * daily_spread * daily_spread +
                       daily_mean * daily_mean * lead_spread_days * lead_spread_days);
}

Quantity use_over_lead_time(const UseBetween& use, const Quantity& lead_days, int more_days) {
  Mixture mixture;
  for (int days = lead_days.least(); days <= lead_days.most(); ++days) {
    const double chance = lead_days.chance_of(days);
    if (chance > 0) mixture.add(chance, use(0, days + more_days));
  }
  return mixture.taken();
}

Order order_for(const ShelfItem& item, int first_day, int review_days, double service_level,
                const UseBetween& use) {
  check(item);
  Order order;
  const Quantity lead = lead_time(item.lead_days, item.lead_spread_days);
  const int usual_days = static_cast<int>(std::ceil(item.lead_days)) + review_days;
  const Quantity usual = use(0, usual_days);
  order.daily_mean = usual.mean() / usual_days;
  order.daily_spread = usual.spread() / std::sqrt(usual_days);
  const double z = normal_quantile(service_level);
  const auto textbook = [&](double days) {
    return reorder_point(order.daily_mean, order.daily_spread, days, item.lead_spread_days, z);
  };
  order.textbook_reorder_point = textbook(item.lead_days) + item.minimum;
  order.textbook_need = textbook(item.lead_days + review_days) + item.minimum;
  order.reorder_point = use_over_lead_time(use, lead, 0).enough_for(service_level) + item.minimum;
  order.need = use_over_lead_time(use, lead, review_days).enough_for(service_level) + item.minimum;
  order.on_hand = on_hand(item, first_day);
  order.on_order = due_within(item, first_day, usual_days);
  order.expiring = expiring_within(item, first_day, usual_days, use);
  const int there = order.on_hand + order.on_order - order.expiring;
  order.packs = packs_for(order.need - there, item.pack_size);
  order.textbook_packs = packs_for(order.textbook_need - there, item.pack_size);
  order.quantity = order.packs * item.pack_size;
  if (item.unit_cost) order.cost = order.quantity * *item.unit_cost;
  order.arithmetic = in_words(order, item, review_days, service_level);
  return order;
}

}  // namespace drapewright::forecast
