#pragma once

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "tests/unit/forecast/cases.h"

namespace drapewright::forecast::tests {

/// Chance in everything that a forecast takes to be uncertain.
inline Settings uncertain() {
  Settings settings = certain();
  settings.extra_dressings_per_week = 0.6;
  settings.early_end_per_week = 0.15;
  settings.extension_share = 0.3;
  settings.new_patients_per_week = 1.5;
  settings.fluid_rates = {{0.1}, {0.5}, {1.3}, {4}};
  return settings;
}

/// One that starts, one that is changed often, one whose wound is large.
inline std::vector<Patient> some_patients(const Settings& settings) {
  wound::Case often = example({"2026-02-25", "2026-03-01"});
  often.dressing.change_every_h = 48;
  const wound::Case large = scaled(example({"2026-02-27"}), 1.4);
  return {patient(example(), settings), patient(often, settings), patient(large, settings)};
}

/// Lives through courses one by one, by chance: knows nothing of distributions.
class Simulator {
 public:
  explicit Simulator(std::uint64_t seed) : random_(seed) {}

  /// Adds what one course uses to the days of the forecast on which it does.
  /// @param shift  the day on which the course's own day 0 falls
  void live(const UsePattern& pattern, int shift, std::vector<int>& days) {
    const int end = end_of(pattern);
    for (const Use& use : scenario_of(pattern).uses) {
      if (use.day < end) count(use.day + shift, use.quantity, days);
    }
    for (const ExtraUse& extra : pattern.extras) {
      double at = extra.from_day;
      while (pattern.extras_per_day > 0) {
        at += std::exponential_distribution<>(pattern.extras_per_day)(random_);
        if (at >= extra.to_day || at >= end) break;
        count(static_cast<int>(std::floor(at)) + shift, extra.quantity, days);
      }
    }
  }

  /// What all of them use of an item on each of so many days, and what newcomers like them add.
  /// @param newcomers  each equally likely; by their `anew`
  std::vector<int> days_of(const std::vector<Patient>& patients,
                           const std::vector<Patient>& newcomers, const std::string& item,
                           double arrivals_per_week, int days) {
    std::vector<int> used(static_cast<std::size_t>(days), 0);
    for (const Patient& one : patients) live(use_of_item(one, item).pattern, 0, used);
    for (int day = 0; day < days; ++day) {
      for (int n = std::poisson_distribution<>(arrivals_per_week / 7)(random_); n > 0; --n) {
        const auto last = newcomers.size() - 1;
        const auto who = std::uniform_int_distribution<std::size_t>(0, last)(random_);
        live(use_of_item(newcomers[who], item).anew, day, used);
      }
    }
    return used;
  }

 private:
  static void count(int day, int quantity, std::vector<int>& days) {
    if (day >= 0 && day < static_cast<int>(days.size())) {
      days[static_cast<std::size_t>(day)] += quantity;
    }
  }

  int end_of(const UsePattern& pattern) {
    double left = std::uniform_real_distribution<>()(random_);
    for (const CourseEnd& end : pattern.ends) {
      if ((left -= end.share) < 0) return end.day;
    }
    return pattern.ends.back().day;
  }
  const Scenario& scenario_of(const UsePattern& pattern) {
    double left = std::uniform_real_distribution<>()(random_);
    for (const Scenario& scenario : pattern.scenarios) {
      if ((left -= scenario.share) < 0) return scenario;
    }
    return pattern.scenarios.back();
  }

  std::mt19937_64 random_;
};

/// How often each count was seen.
struct Observed {
  std::vector<int> counts;
  int runs = 0;
  void count(int n) {
    const auto at = static_cast<std::size_t>(n);
    if (counts.size() <= at) counts.resize(at + 1);
    ++counts[at];
    ++runs;
  }
  double share_of_at_most(int n) const {
    double share = 0;
    for (int k = 0; k <= n && k < static_cast<int>(counts.size()); ++k) {
      share += counts[static_cast<std::size_t>(k)] / static_cast<double>(runs);
    }
    return share;
  }
};

/// Every chance of "at most n" within five standard errors of the observed share, and `more`.
inline void expect_agreement(const Quantity& exact, const Observed& seen, const std::string& what,
                             double more = 0) {
  const double runs = seen.runs;
  double share = 0;
  for (std::size_t n = 0; n < seen.counts.size(); ++n) {
    share += seen.counts[n] / runs;
    const double chance = exact.chance_of_at_most(static_cast<int>(n));
    const double error = std::sqrt(chance * (1 - chance) / runs);
    EXPECT_NEAR(share, chance, 5 * error + 5 / runs + more) << what << ", at most " << n;
  }
}

}  // namespace drapewright::forecast::tests
