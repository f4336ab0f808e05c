#pragma once

#include <string>

namespace drapewright {

/// For people: `value` with exactly `decimals` digits after the decimal mark of their language;
/// halves are rounded up and away from zero ("Record to 0.1 cm, half up"), "-0.0" is written "0.0".
/// @param decimals 0 to 9
std::string format_number(double value, int decimals);

/// For people: `value` in the fewest digits, at most `decimals` after the mark: 5, 0.3, 12.25.
std::string format_short(double value, int decimals = 3);

/// For files that programs read: the same, with a decimal point whatever the language.
std::string plain_number(double value, int decimals);
std::string plain_short(double value, int decimals = 3);

}  // namespace drapewright
