#include "core/forecast/patient.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

#include "core/base/calendar.h"
#include "core/base/error.h"
#include "core/base/say.h"
#include "core/dressing/finding_list.h"
#include "core/forecast/course.h"

namespace drapewright::forecast {
namespace {

using dressing::Severity;
using supplies::Kind;

/// What one application takes.
using Set = std::map<std::string, std::pair<Kind, int>>;

bool is_worn_out_by_time(Kind kind) { return kind == Kind::canister || kind == Kind::battery; }

Set set_of(const dressing::Plan& plan) {
  Set set;
  for (const dressing::Consumable& line : plan.consumables) {
    if (is_worn_out_by_time(line.kind)) continue;
    auto& [kind, count] = set[line.item];
    kind = line.kind;
    count += static_cast<int>(std::ceil(line.per_application - 1e-9));
  }
  return set;
}

const dressing::Consumable* line_of(const dressing::Plan& plan, Kind kind) {
  const auto line = std::ranges::find(plan.consumables, kind, &dressing::Consumable::kind);
  return line == plan.consumables.end() ? nullptr : &*line;
}

class PatientReader {
 public:
  PatientReader(const wound::Case& value, const Settings& settings, const Planner& planner)
      : value_(value), settings_(settings), planner_(planner), plan_(planner(value)) {}

  Patient read() {
    read_wound();
    read_course();
    findings_of_plan();
    if (patient_.running) {
      const Course now(patient_.start_day, first_change_h_, value_.dressing, settings_);
      const Course anew(0, 0, value_.dressing, settings_);
      count_dressings(now);
      list_dressings(now, anew);
      list_canisters(now, anew);
      list_batteries(now, anew);
    }
    return std::move(patient_);
  }

 private:
  void read_wound() {
    patient_.label = value_.label;
    for (const auto& wound : plan_.wounds) patient_.area_cm2 += wound.area.value;
    const auto trend = area_change_of(value_);
    patient_.change_from_series = trend.has_value();
    patient_.area_change_per_week = trend.value_or(settings_.area_change_per_week);
    patient_.fluid_measured = value_.current().exudate_ml_per_day.has_value();
  }

  /// From the applications: when the course began, whether it still runs, the next change.
  void read_course() {
    std::vector<int> days;
    for (const auto& done : value_.applications) {
      if (const auto day = day_number(done.date)) days.push_back(*day - settings_.first_day);
    }
    std::ranges::sort(days);
    const int length = static_cast<int>(std::ceil(value_.dressing.course_days - 1e-9));
    patient_.start_day = days.empty() ? 0 : days.front();
    patient_.end_day = patient_.start_day + length;
    patient_.running = patient_.end_day > 0;
    if (!days.empty()) {
      read_past(days);
      read_next_change(days.back());
    }
    if (days.empty()) {
      add(Severity::note, "course-not-started",
          say("No application is recorded: the course is taken to start on the forecast's first "
              "day."));
    } else if (!patient_.running) {
      add(Severity::warning, "course-over",
          say("By its dates the course ended on {1}: nothing is forecast. If therapy goes on, set "
              "the length of the course.",
              {date(patient_.end_day)}));
    }
  }

  void read_past(const std::vector<int>& days) {
    patient_.past.days = days.back() - days.front();
    patient_.past.recorded = static_cast<int>(days.size()) - 1;
    patient_.past.planned = patient_.past.days * 24 / value_.dressing.change_every_h;
  }

  void read_next_change(int last) {
    const double next_h = 24.0 * last + value_.dressing.change_every_h;
    first_change_h_ = std::max(0.0, next_h);
    patient_.next_change_day = static_cast<int>(std::floor(first_change_h_ / 24 + 1e-9));
    // A day is as exact as a date can be.
    if (!patient_.running) return;
    patient_.overdue_days = std::max(0, -static_cast<int>(std::floor(next_h / 24 + 1e-9)));
    if (patient_.overdue_days > 0) {
      add(Severity::warning, "change-overdue",
          count_of(patient_.overdue_days,
                   "The last recorded change was on {2}, the next was due {1} day ago. Change it, "
                   "or record the change; the forecast starts with one.",
                   "The last recorded change was on {2}, the next was due {1} days ago. Change it, "
                   "or record the change; the forecast starts with one.",
                   {date(last)}));
    }
  }

  std::string date(int day) const { return date_of_day(settings_.first_day + day); }

  void add(Severity severity, const std::string& code, const std::string& text) {
    patient_.findings.push_back(
        {.severity = severity, .code = code, .text = text, .source = dressing::own_rule()});
  }

  void findings_of_plan() {
    patient_.findings.insert(patient_.findings.end(), plan_.findings.begin(), plan_.findings.end());
    std::ranges::stable_sort(patient_.findings, {}, &dressing::Finding::severity);
  }

  // Dressings ----------------------------------------------------------------------------------

  /// What an application on this day takes, by a plan of its own where the wound changes.
  const Set& set_on(int day) {
    const double area = std::pow(1 + patient_.area_change_per_week, day / 7.0);
    if (patient_.area_change_per_week == 0) day = 0;
    const auto [at, is_new] = sets_.try_emplace(day);
    if (is_new) at->second = set_of(day == 0 ? plan_ : plan_of_scaled(std::sqrt(area)));
    return at->second;
  }

  /// A wound that grows beyond what can be planned is planned as it is.
  dressing::Plan plan_of_scaled(double factor) {
    try {
      return planner_(scaled(value_, factor));
    } catch (const InputError& error) {
      add(Severity::warning, "change-not-planned",
          say("The wound as it is forecast cannot be planned ({1}): the plan of its last "
              "assessment is used.",
              {error.problem()}));
      return plan_;
    }
  }

  void count_dressings(const Course& course) {
    UsePattern& dressings = patient_.dressings;
    dressings.ends = course.ends();
    dressings.scenarios.emplace_back();
    for (const int day : course.changes()) add_use(day, 1, dressings);
    dressings.extras = {{0, course.latest_end(), 1}};
    dressings.extras_per_day = settings_.extra_dressings_per_week / 7;
  }

  void list_dressings(const Course& now, const Course& anew) {
    std::map<std::string, std::pair<Kind, UsePattern>> uses, uses_anew;
    collect(now, 0, uses);
    collect(anew, 0, uses_anew);
    // A wound that changes may take an item in one of them only.
    for (const auto& [item, use] : uses_anew) uses.try_emplace(item, use.first, UsePattern());
    for (auto& [item, use] : uses) {
      add_item(item, use.first, std::move(use.second), std::move(uses_anew[item].second));
    }
  }

  void collect(const Course& course, int from,
               std::map<std::string, std::pair<Kind, UsePattern>>& uses) {
    int since = from;
    const Set* lying = &set_on(0);
    for (const int day : course.changes()) {
      add_extras(*lying, since, day, uses);
      lying = &set_on(day);
      since = day;
      for (const auto& [item, what] : *lying) add_use(day, what.second, pattern(item, what, uses));
    }
    add_extras(*lying, since, course.latest_end(), uses);
    for (auto& [item, use] : uses) use.second.ends = course.ends();
  }

  static UsePattern& pattern(const std::string& item, const std::pair<Kind, int>& what,
                             std::map<std::string, std::pair<Kind, UsePattern>>& uses) {
    auto& [kind, pattern] = uses[item];
    kind = what.first;
    if (pattern.scenarios.empty()) pattern.scenarios.emplace_back();
    return pattern;
  }

  static void add_use(int day, int quantity, UsePattern& pattern) {
    auto& uses = pattern.scenarios.front().uses;
    if (!uses.empty() && uses.back().day == day) {
      uses.back().quantity += quantity;
    } else {
      uses.push_back({day, quantity});
    }
  }

  void add_extras(const Set& set, int from, int to,
                  std::map<std::string, std::pair<Kind, UsePattern>>& uses) const {
    if (from >= to || settings_.extra_dressings_per_week == 0) return;
    for (const auto& [item, what] : set) {
      UsePattern& use = pattern(item, what, uses);
      use.extras_per_day = settings_.extra_dressings_per_week / 7;
      if (!use.extras.empty() && use.extras.back().to_day == from &&
          use.extras.back().quantity == what.second) {
        use.extras.back().to_day = to;
      } else {
        use.extras.push_back({from, to, what.second});
      }
    }
  }

  // Pump ---------------------------------------------------------------------------------------

  std::vector<FluidRate> flows() const {
    if (const auto measured = value_.current().exudate_ml_per_day) return {{*measured, 1}};
    std::vector<FluidRate> flows = settings_.fluid_rates;
    for (FluidRate& flow : flows) flow.ml_per_cm2_day *= patient_.area_cm2;
    return flows;
  }

  UsePattern canisters(const Course& course, double measured_after_days) const {
    const auto& dressing = value_.dressing;
    UsePattern pattern{.ends = course.ends()};
    double total = 0;
    for (const FluidRate& flow : flows()) total += flow.weight;
    for (const FluidRate& flow : flows()) {
      const double at_start = flow.ml_per_cm2_day / std::pow(1 + settings_.fluid_change_per_week,
                                                             measured_after_days / 7);
      auto uses = course.canisters(at_start, dressing.canister_ml, dressing.canister_max_days,
                                   settings_.fluid_change_per_week);
      const auto same = std::ranges::find(pattern.scenarios, uses, &Scenario::uses);
      if (same == pattern.scenarios.end()) {
        pattern.scenarios.push_back({flow.weight / total, std::move(uses)});
      } else {
        same->share += flow.weight / total;
      }
    }
    return pattern;
  }

  void list_canisters(const Course& now, const Course& anew) {
    const auto* line = line_of(plan_, Kind::canister);
    if (line == nullptr) return;
    // What was measured was measured today; what is reckoned by area starts with the course.
    const double after = patient_.fluid_measured ? std::max(0, -now.start_day()) : 0;
    add_item(line->item, Kind::canister, canisters(now, after), canisters(anew, 0));
  }

  void list_batteries(const Course& now, const Course& anew) {
    const auto* line = line_of(plan_, Kind::battery);
    if (line == nullptr) return;
    const int a_set = static_cast<int>(line->per_application);
    const auto pattern_of = [&](const Course& course) {
      return UsePattern{.ends = course.ends(),
                        .scenarios = {{1, course.every(value_.dressing.battery_days, a_set)}}};
    };
    add_item(line->item, Kind::battery, pattern_of(now), pattern_of(anew));
  }

  void add_item(const std::string& item, Kind kind, UsePattern now, UsePattern anew) {
    if (now.scenarios.empty()) now.scenarios.emplace_back();
    if (anew.scenarios.empty()) anew.scenarios.emplace_back();
    patient_.items.push_back({item, kind, std::move(now), std::move(anew)});
  }

  const wound::Case& value_;
  const Settings& settings_;
  const Planner& planner_;
  dressing::Plan plan_;
  Patient patient_;
  double first_change_h_ = 0;
  std::map<int, Set> sets_;  ///< by day
};

}  // namespace

wound::Case as_newcomer(wound::Case value) {
  value.applications.clear();
  return value;
}

Patient patient_of(const wound::Case& value, const Settings& settings, const Planner& plan) {
  return PatientReader(value, settings, plan).read();
}

}  // namespace drapewright::forecast
