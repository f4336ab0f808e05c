#include "core/forecast/course.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/base/error.h"
#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright::forecast {
namespace {

/// Above this, it is a slip in the settings.
constexpr double most_a_day = 200;
/// Keeps what falls on the stroke of a day on that day in spite of rounding.
constexpr double instant_days = 1e-9;

int day_of(double days) { return static_cast<int>(std::floor(days + instant_days)); }
int days_up(double days) { return static_cast<int>(std::ceil(days - instant_days)); }

void count(int day, int quantity, std::vector<Use>& uses) {
  if (day < 0) return;
  if (!uses.empty() && uses.back().day == day) {
    uses.back().quantity += quantity;
  } else {
    uses.push_back({day, quantity});
  }
}

void check_rate(double every_days, const char* problem) {
  if (every_days * most_a_day >= 1) return;
  throw InputError(say(problem, {format_short(24 * every_days, 3)}),
                   say("at most {1} a day", {format_short(most_a_day)}));
}

}  // namespace

Course::Course(int start_day, double first_change_h, const wound::DressingSettings& dressing,
               const Settings& settings)
    : start_day_(start_day),
      planned_end_(start_day + days_up(dressing.course_days)),
      latest_end_(planned_end_ +
                  (settings.extension_share > 0 ? days_up(settings.extension_days) : 0)) {
  check_rate(dressing.change_every_h / 24, term("the dressing would be changed every {1} h"));
  list_changes(first_change_h / 24, dressing.change_every_h / 24, dressing.course_days);
  list_ends(settings);
}

void Course::list_changes(double first, double every_days, double course_days) {
  const double planned = start_day_ + course_days;
  for (int k = 0;; ++k) {
    const double at = first + k * every_days;
    // Between the hour of the planned end and the end of its day only an extended course is on.
    const int day = at < planned - instant_days ? day_of(at) : std::max(day_of(at), planned_end_);
    if (day >= latest_end_) return;
    changes_.push_back(day);
  }
}

void Course::list_ends(const Settings& settings) {
  const double stays_on_a_day = std::pow(1 - settings.early_end_per_week, 1.0 / 7);
  double running = 1;
  const auto end_early_until = [&](int from, int to) {
    for (int day = from; day < to; ++day) {
      const double on = running * stays_on_a_day;
      if (running > on) ends_.push_back({day, running - on});
      running = on;
    }
  };
  end_early_until(std::max(0, start_day_) + 1, planned_end_);
  if (latest_end_ == planned_end_) {
    ends_.push_back({planned_end_, running});
    return;
  }
  ends_.push_back({planned_end_, running * (1 - settings.extension_share)});
  running *= settings.extension_share;
  end_early_until(planned_end_ + 1, latest_end_);
  ends_.push_back({latest_end_, running});
}

std::vector<Use> Course::every(double days, int quantity) const {
  check_rate(days, term("a set of batteries would be changed every {1} h"));
  std::vector<Use> uses;
  for (int k = 0;; ++k) {
    const int day = day_of(start_day_ + k * days);
    if (day >= latest_end_) return uses;
    count(day, quantity, uses);
  }
}

std::vector<Use> Course::canisters(double ml_per_day, double capacity_ml, double most_days,
                                   double change_per_week) const {
  const double growth = std::log1p(change_per_week) / 7;  // per day
  const double never = std::numeric_limits<double>::infinity();
  const auto full_after = [&](double since_start) {
    const double now = ml_per_day * std::exp(growth * since_start);
    if (now <= 0) return never;
    if (growth == 0) return capacity_ml / now;
    const double inside = 1 + growth * capacity_ml / now;
    return inside <= 0 ? never : std::log(inside) / growth;
  };
  std::vector<Use> uses;
  for (double at = 0; day_of(start_day_ + at) < latest_end_;) {
    count(day_of(start_day_ + at), 1, uses);
    const double lasts = std::min(full_after(at), most_days);
    check_rate(lasts, term("the canister would be changed every {1} h"));
    at += lasts;
  }
  return uses;
}

}  // namespace drapewright::forecast
