#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "core/practice/source.h"

namespace drapewright::practice {

/// One row of the table of limits: a setting (or a measured figure) with its hard bounds, the
/// range of common practice within them, and where that comes from. Everything that the program
/// applies stands here and nowhere else.
struct Limit {
  std::string_view id;     ///< the setting's name in the case file: "border_cm"
  std::string_view title;  ///< what a form calls it: "Film border"
  std::string_view unit;   ///< "cm"; empty for a plain number
  double minimum = 0;      ///< hard bounds: outside them a case file is refused
  double maximum = 0;
  bool minimum_excluded = false;        ///< the minimum itself is refused, too
  double standard = 0;                  ///< the default
  std::optional<double> usual_minimum;  ///< outside these: a finding
  std::optional<double> usual_maximum;
  Source source;             ///< of the usual range, or of the default where there is none
  std::string_view meaning;  ///< one plain sentence for tooltips and docs
};

/// The whole table, in the order of a form.
std::span<const Limit> limits();
/// @throws std::logic_error for an id that is not in the table
const Limit& limit(std::string_view id);
/// "0 to 2 cm", "above 0 to 10 cm".
std::string bounds_in_words(const Limit& limit);

}  // namespace drapewright::practice
