#include "core/forecast/pattern_use.h"

#include <algorithm>
#include <map>

namespace drapewright::forecast {
namespace {

int used_between(const Scenario& scenario, int from, int to) {
  int total = 0;
  for (const Use& use : scenario.uses) {
    if (use.day >= from && use.day < to) total += use.quantity;
  }
  return total;
}

Quantity extras_between(const UsePattern& pattern, int from, int to) {
  std::map<int, int> days;  // by what an extra dressing takes
  for (const ExtraUse& extra : pattern.extras) {
    const int inside = std::min(to, extra.to_day) - std::max(from, extra.from_day);
    if (inside > 0 && extra.quantity > 0) days[extra.quantity] += inside;
  }
  Quantity total;
  for (const auto& [quantity, exposed] : days) {
    total = sum(total, poisson(pattern.extras_per_day * exposed).times(quantity));
  }
  return total;
}

}  // namespace

Quantity use_of(const UsePattern& pattern, int from, int to) {
  Mixture mixture;
  const auto add = [&](double share, int end) {
    const int until = std::max(from, std::min(to, end));
    const Quantity extras = extras_between(pattern, from, until);
    for (const Scenario& scenario : pattern.scenarios) {
      mixture.add(share * scenario.share, extras, used_between(scenario, from, until));
    }
  };
  double before = 0, after = 0;  // all ends outside the window count as one
  for (const CourseEnd& end : pattern.ends) {
    if (end.day <= from) {
      before += end.share;
    } else if (end.day >= to) {
      after += end.share;
    } else {
      add(end.share, end.day);
    }
  }
  add(before, from);
  add(after, to);
  return mixture.is_empty() ? Quantity() : mixture.taken();
}

double mean_use_of(const UsePattern& pattern, int from, int to) {
  const auto still_running = [&](int day) {
    double share = 0;
    for (const CourseEnd& end : pattern.ends) share += end.day > day ? end.share : 0;
    return share;
  };
  double mean = 0;
  for (const Scenario& scenario : pattern.scenarios) {
    for (const Use& use : scenario.uses) {
      if (use.day < from || use.day >= to) continue;
      mean += scenario.share * use.quantity * still_running(use.day);
    }
  }
  for (const ExtraUse& extra : pattern.extras) {
    for (int day = std::max(from, extra.from_day); day < std::min(to, extra.to_day); ++day) {
      mean += pattern.extras_per_day * extra.quantity * still_running(day);
    }
  }
  return mean;
}

int latest_end(const UsePattern& pattern) {
  return pattern.ends.empty() ? 0 : pattern.ends.back().day;
}

}  // namespace drapewright::forecast
