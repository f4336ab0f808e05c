// What must hold for the plan of any case, and between it and the plans of the same case changed.
// A few cases of each here; `prove_plans` tries thousands.

#include <gtest/gtest.h>
// rapidcheck's header needs GoogleTest's before it.
#include <rapidcheck/gtest.h>

#include "core/base/error.h"
#include "tests/support/made_cases.h"
#include "tests/support/plan_invariants.h"
#include "tests/support/plan_relations.h"
#include "tests/support/plan_texts.h"

namespace drapewright::support {
namespace {

struct Drawn {
  std::uint64_t seed;
  wound::Case value;
};

/// Shrinks to fewer wounds and fewer points.
Drawn drawn_case() {
  const auto seed = *rc::gen::inRange<std::uint64_t>(0, 1'000'000'000).as("seed");
  const CaseBounds bounds{.most_wounds = *rc::gen::inRange(1, 5).as("most wounds"),
                          .most_points = *rc::gen::inRange(6, 150).as("most points")};
  return {seed, made_case(seed, bounds)};
}

void require_none(const std::vector<std::string>& broken) {
  for (const std::string& sentence : broken) RC_LOG() << sentence << '\n';
  RC_ASSERT(broken.empty());
}

/// A case that is refused must be refused by `check`; all others are planned.
std::optional<dressing::Plan> planned(const wound::Case& value) {
  try {
    wound::check(value);
  } catch (const InputError&) {
    RC_ASSERT_THROWS_AS(dressing::plan_dressing(value), InputError);
    return std::nullopt;
  }
  return dressing::plan_dressing(value);
}

RC_GTEST_PROP(PlanOfAnyCase, KeepsItsPromises, ()) {
  const Drawn drawn = drawn_case();
  if (const auto plan = planned(drawn.value)) {
    require_none(broken_promises(drawn.value, *plan));
    require_none(broken_texts(*plan));
  }
}

class PlansOfTwoCases : public testing::TestWithParam<Relation> {};

TEST_P(PlansOfTwoCases, AreRelated) {
  const Relation& relation = GetParam();
  EXPECT_TRUE(rc::check(std::string(relation.name), [&] {
    const Drawn drawn = drawn_case();
    if (const auto plan = planned(drawn.value)) {
      require_none(relation.broken(drawn.value, *plan, drawn.seed));
    }
  }));
}

INSTANTIATE_TEST_SUITE_P(Changed, PlansOfTwoCases,
                         testing::ValuesIn(relations().begin(), relations().end()),
                         [](const auto& relation) {
                           std::string name(relation.param.name);
                           std::erase_if(name, [](char c) { return c == ' ' || c == '-'; });
                           return name;
                         });

}  // namespace
}  // namespace drapewright::support
