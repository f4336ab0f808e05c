#include "core/forecast/shelf.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "core/base/error.h"
#include "core/base/say.h"

namespace drapewright::forecast {
namespace {

constexpr double least_chance = 1e-16;  // of a state that is still followed

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

/// Everything leaves the shelf in the order of its dates. So one number says all about the shelf:
/// how many have left it, used or wasted; each comes with the chance that it is so.
class Follower {
 public:
  Follower(const ShelfItem& item, int first_day, int weeks, const UseBetween& use)
      : batches_(batches_of(item, first_day)), last_day_(7 * weeks), use_(use) {
    for (int day = 0; day <= last_day_; day += 7) days_.insert(day);
    for (const Batch& batch : batches_) {
      if (batch.from < last_day_) days_.insert(batch.from);
      if (batch.until > 0 && batch.until < last_day_) days_.insert(batch.until);
    }
    look_for_disorder();
  }

  ShelfForecast follow() {
    gone_[0] = {1, 0};
    receive(0, true);
    result_.wasted_at_start = expire(0);
    result_.wasted = result_.wasted_at_start;
    int from = 0;
    for (const int day : days_) {
      if (day == 0) continue;
      serve(use_(from, day));
      if (day % 7 == 0) end_week();
      if (day < last_day_) {
        receive(day, false);
        week_.wasted += expire(day);
      }
      from = day;
    }
    total();
    return std::move(result_);
  }

 private:
  struct Chances {
    double never_short = 0;
    double been_short = 0;
    double both() const { return never_short + been_short; }
  };

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
    const auto least = static_cast<std::size_t>(gone_at_least);
    double wasted = 0;
    if (gone_.size() <= least) gone_.resize(least + 1);
    for (std::size_t gone = 0; gone < least; ++gone) {
      wasted += static_cast<double>(least - gone) * gone_[gone].both();
      gone_[least].never_short += gone_[gone].never_short;
      gone_[least].been_short += gone_[gone].been_short;
      gone_[gone] = {};
    }
    return wasted;
  }

  void serve(const Quantity& wanted) {
    const auto all = static_cast<std::size_t>(received_);
    std::vector<Chances> after(all + 1);
    for (std::size_t gone = 0; gone < gone_.size(); ++gone) {
      const Chances& now = gone_[gone];
      if (now.both() < least_chance) {
        after[std::min(gone, all)].never_short += now.never_short;
        after[std::min(gone, all)].been_short += now.been_short;
        continue;
      }
      serve_from(gone, now, wanted, after);
    }
    gone_ = std::move(after);
  }

  void serve_from(std::size_t gone, const Chances& now, const Quantity& wanted,
                  std::vector<Chances>& after) {
    const std::size_t there = after.size() - 1 - gone;
    const auto& chances = wanted.chances();
    const auto least = static_cast<std::size_t>(wanted.least());
    const std::size_t served = there < least ? 0 : std::min(chances.size(), there - least + 1);
    double used = 0, short_of = 0, ran_out = 0;
    for (std::size_t i = 0; i < served; ++i) {
      Chances& then = after[gone + least + i];
      then.never_short += chances[i] * now.never_short;
      then.been_short += chances[i] * now.been_short;
      used += static_cast<double>(least + i) * chances[i];
    }
    for (std::size_t i = served; i < chances.size(); ++i) {
      ran_out += chances[i];
      short_of += static_cast<double>(least + i - there) * chances[i];
    }
    after.back().been_short += ran_out * now.both();
    week_.used += (used + static_cast<double>(there) * ran_out) * now.both();
    week_.short_of += short_of * now.both();
  }

  void end_week() {
    const auto all = static_cast<std::size_t>(received_);
    std::vector<double> left(all + 1, 0.0);
    for (std::size_t gone = 0; gone < gone_.size(); ++gone) {
      left[all - gone] += gone_[gone].both();
      week_.run_out += gone_[gone].been_short;
    }
    week_.left = Quantity(0, std::move(left));
    result_.weeks.push_back(std::move(week_));
    week_ = {};
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
  std::set<int> days_;  ///< on which anything happens
  int received_ = 0;
  std::vector<Chances> gone_ = std::vector<Chances>(1);
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
