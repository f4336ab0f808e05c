#pragma once

#include <compare>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "core/forecast/settings.h"
#include "core/wound/case.h"

namespace drapewright::forecast {

// Days are counted from the forecast's first day, 0. A course that ends on day n uses nothing on
// day n or later.

/// So many pieces are used on a day, if the course still runs.
struct Use {
  int day = 0;
  int quantity = 0;
  auto operator<=>(const Use&) const = default;
};

/// What one item's use would be if a course ran on to its latest end; one of several that are
/// possible.
struct Scenario {
  double share = 1;
  std::vector<Use> uses;  ///< by day
  auto operator<=>(const Scenario&) const = default;
};

/// Each dressing that is put on out of turn on these days takes so many pieces.
struct ExtraUse {
  int from_day = 0;
  int to_day = 0;  ///< not part of it
  int quantity = 0;
  auto operator<=>(const ExtraUse&) const = default;
};

struct CourseEnd {
  int day = 0;
  double share = 0;
  auto operator<=>(const CourseEnd&) const = default;
};

/// How one patient uses one item: all that its distribution over any days follows from.
struct UsePattern {
  std::vector<CourseEnd> ends;  ///< by day; the shares add up to 1
  std::vector<Scenario> scenarios;
  std::vector<ExtraUse> extras;
  double extras_per_day = 0;
  auto operator<=>(const UsePattern&) const = default;
};

struct ItemUse {
  std::string item;
  supplies::Kind kind = supplies::Kind::other;
  UsePattern pattern;  ///< of the patient as he is now
  UsePattern anew;     ///< of one like him who starts on day 0
};

/// What was put on up to now against what the interval asks for, over whole days.
struct RecordedDressings {
  int days = 0;        ///< from the first application to the last
  int recorded = 0;    ///< after the first, up to the last
  double planned = 0;  ///< in those days, at the change interval
};

/// One case as the stores see it.
struct Patient {
  std::string label;
  int start_day = 0;  ///< of the course; before the forecast for one that runs
  int end_day = 0;    ///< by plan
  bool running = false;
  int overdue_days = 0;  ///< of the next change
  double area_cm2 = 0;
  double area_change_per_week = 0;
  bool change_from_series = false;  ///< three assessments or more
  bool fluid_measured = false;
  RecordedDressings past;
  int next_change_day = 0;
  UsePattern dressings;                     ///< one for each that is put on
  std::vector<ItemUse> items;               ///< none for a course that is over
  std::vector<dressing::Finding> findings;  ///< those of the plan and those of the course
};

using Planner = std::function<dressing::Plan(const wound::Case&)>;

/// Reads a case for the stores. Calls `plan` for the assessment as it is, and where the wound
/// changes for every later application with the wound scaled to that day.
/// @throws InputError for a case that cannot be planned, or takes more than 200 canisters or sets
///         of batteries a day
Patient patient_of(const wound::Case& value, const Settings& settings, const Planner& plan);

/// The case as that of one who is still to come: nothing has been put on yet.
wound::Case as_newcomer(wound::Case value);

/// The change of area per week, as a share, that fits the assessments best (exponential, by least
/// squares on the logarithm); nothing for fewer than three different days.
std::optional<double> area_change_of(const wound::Case& value);

/// The wound with every length multiplied by `factor` about its centroid: outline, islands, depth,
/// run-in, pockets and tunnels.
wound::Case scaled(const wound::Case& value, double factor);

}  // namespace drapewright::forecast
