#pragma once

#include <optional>
#include <span>
#include <string>
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
  bool maximum_excluded = false;        ///< the maximum itself is refused, too
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
/// False for what a case file may not hold, and for what is not finite.
bool within_bounds(const Limit& limit, double value);
/// "0 to 2 cm", "above 0 to 10 cm", "-300 to below 0 mmHg".
std::string bounds_in_words(const Limit& limit);
/// "4 to 5 cm", "at most 14 days"; empty where common practice sets no range.
std::string usual_in_words(const Limit& limit);

}  // namespace drapewright::practice
