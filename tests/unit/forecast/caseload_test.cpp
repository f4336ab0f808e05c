#include "core/forecast/caseload.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>

#include "core/forecast/pattern_use.h"
#include "tests/unit/forecast/simulation.h"

namespace drapewright::forecast {
namespace {

using tests::certain;
using tests::example;
using tests::expect_agreement;
using tests::Observed;
using tests::patient;
using tests::Simulator;
using tests::some_patients;
using tests::uncertain;

/// Use of an item between two days, over many lives of the same caseload.
Observed simulate(const std::vector<Patient>& patients, const std::vector<Patient>& newcomers,
                  const std::string& item, int from, int to, double arrivals_per_week, int runs) {
  Simulator chance(20260302);
  Observed observed;
  for (int run = 0; run < runs; ++run) {
    const auto days = chance.days_of(patients, newcomers, item, arrivals_per_week, to);
    observed.count(std::accumulate(days.begin() + from, days.end(), 0));
  }
  return observed;
}

/// Every chance within the simulation's own error, and the mean.
void expect_same(const Quantity& exact, const Observed& seen, const std::string& what) {
  expect_agreement(exact, seen, what);
  double mean = 0;
  for (std::size_t n = 0; n < seen.counts.size(); ++n) {
    mean += static_cast<double>(n) * seen.counts[n] / seen.runs;
  }
  EXPECT_NEAR(mean, exact.mean(), 5 * exact.spread() / std::sqrt(seen.runs)) << what;
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
    const Observed seen = simulate(patients, patients, window.item, window.from, window.to,
                                   settings.new_patients_per_week, 40000);
    expect_same(caseload.use(window.item, window.from, window.to), seen,
                std::string(window.item) + " " + std::to_string(window.from));
  }
}

TEST(Caseload, WithChosenProfilesAgreesWithASimulationOfThem) {
  Settings settings = uncertain();
  settings.new_patients_per_week = 2.5;
  const auto all = some_patients(settings);
  const std::vector<Patient> present{all[0], all[2]}, chosen{all[1], all[1], all[2]};
  Caseload caseload(settings.new_patients_per_week);
  for (const Patient& one : chosen) caseload.add_profile(one);
  for (const Patient& one : present) caseload.add(one);
  EXPECT_EQ(caseload.profiles(), 3);
  for (const auto& [from, to] : {std::pair{0, 14}, {21, 28}}) {
    expect_same(caseload.use("Film", from, to),
                simulate(present, chosen, "Film", from, to, 2.5, 40000), std::to_string(from));
  }
}

TEST(Caseload, OfProfilesAloneHasTheirUse) {
  Caseload caseload(2.0);
  const wound::Case over = example({"2026-01-01"});
  caseload.add(patient(over));
  EXPECT_TRUE(caseload.items().empty());
  caseload.add_profile(patient(as_newcomer(over)));
  EXPECT_EQ(caseload.patients(), 0);
  EXPECT_NEAR(caseload.use("Film", 70, 77).mean(), 2.0 * 5, 1e-9);
  EXPECT_EQ(Caseload(2.0).profiles(), 0);
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
