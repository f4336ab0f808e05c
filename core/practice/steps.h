#pragma once

#include <span>
#include <string_view>

#include "core/practice/source.h"

namespace drapewright::practice {

/// A step of an application, in the order of the work.
struct Step {
  std::string_view id;
  std::string_view text;  ///< what is done, for a box to tick
  Source source;
};

std::span<const Step> steps();

}  // namespace drapewright::practice
