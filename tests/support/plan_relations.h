#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/dressing/plan.h"
#include "core/wound/case.h"

namespace drapewright::support {

/// A promise about two plans: that of a case, and that of a case made from it.
struct Relation {
  std::string_view name;
  /// What does not hold, a sentence each; empty when all holds or the promise does not apply.
  /// @param plan  of `value`
  /// @param seed  of what is drawn at random (an angle, a shift, the moved points)
  /// @throws what plan_dressing throws, but for a changed case that `wound::check` refuses
  std::vector<std::string> (*broken)(const wound::Case& value, const dressing::Plan& plan,
                                     std::uint64_t seed);
};

/// All of them: turned and moved, re-ordered, larger border, larger inset, more zones, retraced.
std::span<const Relation> relations();

}  // namespace drapewright::support
