#pragma once

#include <string>

namespace drapewright {

/// `value` with exactly `decimals` digits after a decimal point, whatever the locale; halves are
/// rounded up and away from zero ("Record to 0.1 cm, half up"), "-0.0" is written "0.0".
/// @param decimals 0 to 9
std::string format_number(double value, int decimals);

/// `value` in the fewest digits, at most `decimals` after the point: 5, 0.3, 12.25.
std::string format_short(double value, int decimals = 3);

/// "1 piece", "3 pieces": a count with its noun.
std::string count_of(int count, const std::string& noun, const std::string& plural = {});

}  // namespace drapewright
