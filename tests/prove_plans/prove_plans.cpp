// prove_plans COUNT [FIRST_SEED [SECONDS [MOST_WOUNDS [MOST_POINTS]]]]
//
// Plans COUNT made cases, audits every plan with GEOS, and holds it beside the plans of the case
// turned, moved, re-ordered, retraced and so on. Prints a line for every promise that does not
// hold, with the seed of its case, and at the end how often each promise was tried. Ends with 0
// only when all held. With SECONDS it stops early.
//
// prove_plans case SEED [MOST_WOUNDS [MOST_POINTS]]
//
// Writes the made case of a seed as a case file, to look into it.

#include <chrono>
#include <cstdio>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "core/dressing/plan.h"
#include "tests/support/made_cases.h"
#include "tests/support/plan_invariants.h"
#include "tests/support/plan_relations.h"
#include "tests/support/plan_texts.h"

namespace drapewright {
namespace {

using Clock = std::chrono::steady_clock;

class Prover {
 public:
  explicit Prover(const support::CaseBounds& bounds) : bounds_(bounds) {}

  void prove(std::uint64_t seed) {
    const wound::Case value = support::made_case(seed, bounds_);
    try {
      wound::check(value);
    } catch (const InputError&) {
      ++refused_;
      return;
    }
    try {
      prove(seed, value);
    } catch (const std::exception& error) {
      report(seed, "throws", {error.what()});
    }
  }

  bool sum_up() const {
    std::printf("%d cases refused by their own check\n", refused_);
    bool all_hold = true;
    for (const auto& [name, tally] : tallies_) {
      std::printf("%-18s %7d cases, %d broken\n", name.c_str(), tally.tried, tally.broken);
      all_hold = all_hold && tally.broken == 0;
    }
    std::printf("slowest plan: seed %llu, %.0f ms\n", static_cast<unsigned long long>(slowest_),
                slowest_ms_);
    return all_hold;
  }

 private:
  struct Tally {
    int tried = 0;
    int broken = 0;
  };

  void prove(std::uint64_t seed, const wound::Case& value) {
    const auto start = Clock::now();
    const dressing::Plan plan = dressing::plan_dressing(value);
    const std::chrono::duration<double, std::milli> took = Clock::now() - start;
    if (took.count() > slowest_ms_) {
      slowest_ms_ = took.count();
      slowest_ = seed;
    }
    report(seed, "throws", {});
    report(seed, "audited", support::broken_promises(value, plan));
    report(seed, "texts", support::broken_texts(plan));
    for (const support::Relation& relation : support::relations()) {
      report(seed, std::string(relation.name), relation.broken(value, plan, seed));
    }
  }

  void report(std::uint64_t seed, const std::string& name, const std::vector<std::string>& broken) {
    ++tallies_[name].tried;
    if (broken.empty()) return;
    ++tallies_[name].broken;
    for (const std::string& sentence : broken) {
      std::printf("seed %llu: %s: %s\n", static_cast<unsigned long long>(seed), name.c_str(),
                  sentence.c_str());
    }
    std::fflush(stdout);
  }

  support::CaseBounds bounds_;
  std::map<std::string, Tally> tallies_;
  int refused_ = 0;
  std::uint64_t slowest_ = 0;
  double slowest_ms_ = 0;
};

constexpr const char* usage =
    "usage: prove_plans COUNT [FIRST_SEED [SECONDS [MOST_WOUNDS [MOST_POINTS]]]]\n"
    "       prove_plans case SEED [MOST_WOUNDS [MOST_POINTS]]\n";

int run(const std::vector<std::string>& arguments) {
  const auto number = [&](std::size_t at, int otherwise) {
    return at < arguments.size() ? std::stoi(arguments[at]) : otherwise;
  };
  if (arguments.empty() || (arguments[0] == "case" && arguments.size() < 2)) {
    std::fputs(usage, stderr);
    return 2;
  }
  if (arguments[0] == "case") {
    const auto seed = static_cast<std::uint64_t>(number(1, 1));
    const support::CaseBounds bounds{.most_wounds = number(2, 4), .most_points = number(3, 400)};
    std::puts(casefile::case_to_json(support::made_case(seed, bounds)).c_str());
    return 0;
  }
  const int count = number(0, 0), first = number(1, 1), seconds = number(2, 1'000'000);
  Prover prover({.most_wounds = number(3, 4), .most_points = number(4, 400)});
  const auto end = Clock::now() + std::chrono::seconds(seconds);
  for (int i = 0; i < count && Clock::now() < end; ++i) {
    prover.prove(static_cast<std::uint64_t>(first + i));
  }
  return prover.sum_up() ? 0 : 1;
}

}  // namespace
}  // namespace drapewright

int main(int count, char** arguments) {
  return drapewright::run({arguments + 1, arguments + count});
}
