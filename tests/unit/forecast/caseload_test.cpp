#include "core/forecast/caseload.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "core/forecast/pattern_use.h"
#include "tests/unit/forecast/cases.h"

namespace drapewright::forecast {
namespace {

using tests::certain;
using tests::example;
using tests::patient;

Settings uncertain() {
  Settings settings = certain();
  settings.extra_dressings_per_week = 0.6;
  settings.early_end_per_week = 0.15;
  settings.extension_share = 0.3;
  settings.new_patients_per_week = 1.5;
  settings.fluid_rates = {{0.1}, {0.5}, {1.3}, {4}};
  return settings;
}

std::vector<Patient> some_patients(const Settings& settings) {
  wound::Case often = example({"2026-02-25", "2026-03-01"});
  often.dressing.change_every_h = 48;
  wound::Case large = scaled(example({"2026-02-27"}), 1.4);
  return {patient(example(), settings), patient(often, settings), patient(large, settings)};
}

/// Lives through courses one by one, by chance: knows nothing of distributions.
class Simulator {
 public:
  explicit Simulator(std::uint64_t seed) : random_(seed) {}

  int used(const UsePattern& pattern, int shift, int from, int to) {
    const int end = end_of(pattern);
    const Scenario& scenario = scenario_of(pattern);
    int total = 0;
    for (const Use& use : scenario.uses) {
      if (use.day < end && inside(use.day + shift, from, to)) total += use.quantity;
    }
    for (const ExtraUse& extra : pattern.extras) {
      double at = extra.from_day;
      while (pattern.extras_per_day > 0) {
        at += std::exponential_distribution<>(pattern.extras_per_day)(random_);
        if (at >= extra.to_day || at >= end) break;
        if (inside(static_cast<int>(std::floor(at)) + shift, from, to)) total += extra.quantity;
      }
    }
    return total;
  }

  int arrivals(double mean) { return std::poisson_distribution<>(mean)(random_); }
  int any(int count) { return std::uniform_int_distribution<>(0, count - 1)(random_); }

 private:
  static bool inside(int day, int from, int to) { return day >= from && day < to; }

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

struct Observed {
  std::vector<int> counts;
  int runs = 0;
  void count(int n) {
    if (counts.size() <= static_cast<std::size_t>(n))
      counts.resize(static_cast<std::size_t>(n) + 1);
    ++counts[static_cast<std::size_t>(n)];
    ++runs;
  }
};

const UsePattern& pattern_of(const Patient& patient, const std::string& item, bool anew) {
  const ItemUse& use = tests::use_of_item(patient, item);
  return anew ? use.anew : use.pattern;
}

Observed simulate(const std::vector<Patient>& patients, const std::string& item, int from, int to,
                  double arrivals_per_week, int runs) {
  Simulator chance(20260302);
  Observed observed;
  for (int run = 0; run < runs; ++run) {
    int total = 0;
    for (const Patient& one : patients)
      total += chance.used(pattern_of(one, item, false), 0, from, to);
    for (int day = 0; day < to; ++day) {
      for (int n = chance.arrivals(arrivals_per_week / 7); n > 0; --n) {
        const auto who = static_cast<std::size_t>(chance.any(static_cast<int>(patients.size())));
        total += chance.used(pattern_of(patients[who], item, true), day, from, to);
      }
    }
    observed.count(total);
  }
  return observed;
}

/// Every chance of "at most n" within five standard errors of the simulated share, and the mean.
void expect_agreement(const Quantity& exact, const Observed& seen, const std::string& what) {
  const double runs = seen.runs;
  double share = 0, mean = 0;
  for (std::size_t n = 0; n < seen.counts.size(); ++n) {
    share += seen.counts[n] / runs;
    mean += static_cast<double>(n) * seen.counts[n] / runs;
    const double chance = exact.chance_of_at_most(static_cast<int>(n));
    const double error = std::sqrt(chance * (1 - chance) / runs);
    EXPECT_NEAR(share, chance, 5 * error + 5 / runs) << what << ", at most " << n;
  }
  EXPECT_NEAR(mean, exact.mean(), 5 * exact.spread() / std::sqrt(runs)) << what;
}

// 5 x 40 000 runs of 6 to 15 courses each: two million courses.
TEST(Caseload, AgreesWithASimulationWithinItsOwnError) {
  const Settings settings = uncertain();
  const auto patients = some_patients(settings);
  Caseload caseload(settings.new_patients_per_week);
  for (const Patient& one : patients) caseload.add(one);
  struct Window {
    const char* item;
    int from, to;
  };
  for (const Window& window :
       {Window{"Filler", 7, 14}, Window{"Filler", 0, 56}, Window{"Canister", 0, 21},
        Window{"Battery", 14, 28}, Window{"Film", 49, 56}}) {
    const Observed seen = simulate(patients, window.item, window.from, window.to,
                                   settings.new_patients_per_week, 40000);
    expect_agreement(caseload.use(window.item, window.from, window.to), seen,
                     std::string(window.item) + " " + std::to_string(window.from));
  }
}

TEST(Caseload, OfManyAlikeIsTheSumOfThem) {
  const Patient one = patient(example(), uncertain());
  Caseload counted, added;
  counted.add(one, 7);
  for (int i = 0; i < 7; ++i) added.add(one);
  EXPECT_EQ(counted.use("Film", 0, 14), added.use("Film", 0, 14));
  EXPECT_EQ(counted.patients(), 7);
  Quantity sum_of_seven;
  for (int i = 0; i < 7; ++i) {
    sum_of_seven = sum(sum_of_seven, use_of(tests::use_of_item(one, "Film").pattern, 0, 14));
  }
  for (int n = 0; n <= sum_of_seven.most(); ++n) {
    EXPECT_NEAR(counted.use("Film", 0, 14).chance_of(n), sum_of_seven.chance_of(n), 1e-13);
  }
}

TEST(Caseload, DoesNotDependOnTheOrderOfItsPatients) {
  const auto patients = some_patients(uncertain());
  Caseload forwards(1), backwards(1);
  for (std::size_t i = 0; i < patients.size(); ++i) {
    forwards.add(patients[i]);
    backwards.add(patients[patients.size() - 1 - i]);
  }
  for (const auto& item : forwards.items()) {
    EXPECT_EQ(forwards.use(item, 0, 28), backwards.use(item, 0, 28)) << item;
  }
}

TEST(Caseload, OfNewPatientsReachesASteadyState) {
  // Rate x use of a whole course, once arrivals and ends balance (Little's law).
  const Settings settings = certain();
  const Patient one = patient(example(), settings);
  Caseload caseload(2.0);
  caseload.add(one);
  EXPECT_NEAR(caseload.use("Film", 70, 77).mean(), 2.0 * 5, 1e-9);
  EXPECT_NEAR(caseload.use("Canister", 70, 77).mean(), 2.0 * 2, 1e-9);
}

TEST(Caseload, CountsAnItemThatNotAllNewPatientsUse) {
  const Patient one = patient(example(), certain());
  Patient other = one;
  other.items = {{"Other", supplies::Kind::other, one.items[0].pattern, one.items[0].anew}};
  Caseload caseload(2.0);
  caseload.add(one);
  caseload.add(other);
  EXPECT_NEAR(caseload.use("Film", 70, 77).mean(), 5, 1e-9);
}

TEST(Caseload, WithoutPatientsUsesNothing) {
  Caseload caseload(3);
  EXPECT_TRUE(caseload.items().empty());
  caseload.add(patient(example({"2026-01-01"})));
  EXPECT_EQ(caseload.patients(), 0);
}

}  // namespace
}  // namespace drapewright::forecast
