#pragma once

#include <span>
#include <string_view>

#include "core/practice/source.h"

namespace drapewright::practice {

/// A rule of the trade that is no number: what is done, and what that rests on.
struct Rule {
  std::string_view id;
  std::string_view text;  ///< one plain sentence
  Source source;
};

std::span<const Rule> rules();
/// @throws std::logic_error for an id that is not in the table
const Rule& rule(std::string_view id);

}  // namespace drapewright::practice
