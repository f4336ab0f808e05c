#include "core/forecast/shelf.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "core/base/error.h"
#include "core/base/say.h"
#include "core/forecast/shelf_state.h"

namespace drapewright::forecast {
namespace {

/// One lot on the shelf or to come, in the forecast's days.
struct Batch {
  int from = 0;                                 ///< day on which it comes
  int until = std::numeric_limits<int>::max();  ///< first day on which it is past its date
  int quantity = 0;
};

std::vector<Batch> batches_of(const ShelfItem& item, int first_day) {
  std::vector<Batch> batches;
  const auto add = [&](int from, int quantity, const std::optional<int>& expires) {
    Batch batch{.from = std::max(0, from), .quantity = quantity};
    if (expires) batch.until = *expires - first_day + 1;
    batches.push_back(batch);
  };
  for (const Lot& lot : item.lots) add(0, lot.quantity, lot.expires);
  // What should have come by now is taken to come on the first day.
  for (const Delivery& delivery : item.deliveries) {
    add(delivery.due - first_day, delivery.quantity, delivery.expires);
  }
  return batches;
}

int all_of(const std::vector<Batch>& batches) {
  int all = 0;
  for (const Batch& batch : batches) all += batch.quantity;
  return all;
}

/// From one delivery or expiry to the next, and from each of them to the ends of the weeks after
/// it: in one step, so that the use in between is that of all its days together.
class Follower {
 public:
  Follower(const ShelfItem& item, int first_day, int weeks, const UseBetween& use)
      : batches_(batches_of(item, first_day)),
        last_day_(7 * weeks),
        use_(use),
        state_(all_of(batches_), use(0, last_day_)) {
    for (const Batch& batch : batches_) {
      if (batch.from > 0 && batch.from < last_day_) events_.insert(batch.from);
      if (batch.until > 0 && batch.until < last_day_) events_.insert(batch.until);
    }
    look_for_disorder();
  }

  ShelfForecast follow() {
    receive(0, true);
    result_.wasted_at_start = expire(0);
    result_.wasted = result_.wasted_at_start;
    for (int day = 1; day <= last_day_; ++day) {
      const bool happens = events_.contains(day);
      if (day % 7 != 0 && !happens) continue;
      Look look = look_at(day);
      find_run_out(day, look.state.been_short());
      if (day % 7 == 0) end_week(look);
      if (!happens) continue;
      since_ = day;
      served_ = look.served;
      state_ = std::move(look.state);
      receive(day, false);
      week_.wasted += expire(day);
    }
    total();
    return std::move(result_);
  }

 private:
  /// The shelf on a day, before anything comes or is taken off it.
  struct Look {
    ShelfState state;
    ShelfState::Served served;  ///< since the first day
  };

  Look look_at(int day) const {
    Look look{state_, served_};
    const Quantity asked = use_(0, day);
    const auto more =
        look.state.serve(UseGivenPast(use_(0, since_), use_(since_, day), asked), asked, received_);
    look.served.used += more.used;
    look.served.short_of += more.short_of;
    return look;
  }

  void look_for_disorder() {
    for (const Batch& late : batches_) {
      for (const Batch& early : batches_) {
        if (late.from > early.from && late.until < early.until) result_.out_of_order = true;
      }
    }
  }

  void receive(int day, bool at_start) {
    for (const Batch& batch : batches_) {
      if (batch.from != day) continue;
      received_ += batch.quantity;
      if (!at_start) week_.received += batch.quantity;
    }
    if (at_start) result_.start = received_;
  }

  /// @return how many are wasted on average
  double expire(int day) {
    int gone_at_least = 0;
    for (const Batch& batch : batches_) {
      if (batch.until <= day && batch.from <= day) gone_at_least += batch.quantity;
    }
    return state_.expire(gone_at_least);
  }

  void end_week(const Look& look) {
    week_.used = look.served.used - week_began_.used;
    week_.short_of = look.served.short_of - week_began_.short_of;
    week_began_ = look.served;
    week_.left = look.state.left(received_);
    week_.band = band_of(week_.left);
    week_.run_out = look.state.been_short();
    result_.weeks.push_back(std::move(week_));
    week_ = {};
  }

  /// On which of the days since the last look something came to be short with each of the chances.
  void find_run_out(int to, double chance) {
    auto& days = result_.run_out_days;
    while (days.size() < run_out_chances.size() && chance >= run_out_chances[days.size()]) {
      int before = looked_, by = to;
      while (by - before > 1) {
        const int day = (before + by) / 2;
        (look_at(day).state.been_short() < run_out_chances[days.size()] ? before : by) = day;
      }
      days.push_back(by - 1);
    }
    looked_ = to;
  }

  void total() {
    for (const ShelfWeek& week : result_.weeks) {
      result_.received += week.received;
      result_.used += week.used;
      result_.short_of += week.short_of;
      result_.wasted += week.wasted;
    }
    result_.left =
        result_.weeks.empty() ? result_.start - result_.wasted : result_.weeks.back().left.mean();
  }

  std::vector<Batch> batches_;
  int last_day_;
  const UseBetween& use_;
  std::set<int> events_;  ///< days on which something comes or is past its date
  int received_ = 0;
  int since_ = 0;   ///< the last of them
  int looked_ = 0;  ///< up to this day it is known when what ran out
  ShelfState state_;
  ShelfState::Served served_, week_began_;
  ShelfWeek week_;
  ShelfForecast result_;
};

void check_number(const ShelfItem& item, const char* problem, double value, double most) {
  if (value >= 0 && value <= most) return;
  throw InputError(say(problem, {item.item}), say("0 to {1}", {std::to_string(most)}));
}

}  // namespace

void check(const ShelfItem& item) {
  constexpr double most_pieces = 1e6;
  if (item.item.empty()) throw InputError(say("an item has no name"), say("a name"));
  for (const Lot& lot : item.lots)
    check_number(item, term("{1}: a lot's count is out of bounds"), lot.quantity, most_pieces);
  for (const Delivery& delivery : item.deliveries) {
    check_number(item, term("{1}: a delivery's count is out of bounds"), delivery.quantity,
                 most_pieces);
  }
  check_number(item, term("{1}: the minimum is out of bounds"), item.minimum, most_pieces);
  check_number(item, term("{1}: the lead time is out of bounds"), item.lead_days, 3660);
  check_number(item, term("{1}: the spread of the lead time is out of bounds"),
               item.lead_spread_days, 3660);
  check_number(item, term("{1}: the cost is out of bounds"), item.unit_cost.value_or(0), 1e9);
  if (item.pack_size < 1 || item.pack_size > most_pieces) {
    throw InputError(say("{1}: the pack size is {2}", {item.item, item.pack_size}),
                     say("1 or more"));
  }
}

std::optional<int> ShelfForecast::run_out_week(double chance) const {
  for (std::size_t i = 0; i < weeks.size(); ++i) {
    if (weeks[i].run_out >= chance) return static_cast<int>(i) + 1;
  }
  return {};
}

ShelfForecast follow_shelf(const ShelfItem& item, int first_day, int weeks, const UseBetween& use) {
  check(item);
  return Follower(item, first_day, weeks, use).follow();
}

}  // namespace drapewright::forecast
