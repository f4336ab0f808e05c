#include "core/base/numbers.h"

#include <array>
#include <charconv>
#include <cmath>

namespace drapewright {

std::string format_number(double value, int decimals) {
  if (std::isnan(value)) return "not a number";
  if (std::isinf(value)) return value > 0 ? "infinite" : "-infinite";
  const double scale = std::pow(10.0, decimals);
  // A hair is added before rounding so that 4.05, stored as 4.04999..., still counts as a half.
  double rounded = std::floor(std::fabs(value) * scale * (1 + 1e-12) + 0.5) / scale;
  if (value < 0 && rounded > 0) rounded = -rounded;
  std::array<char, 400> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), rounded,
                                 std::chars_format::fixed, decimals);
  return std::string(text.data(), end.ptr);
}

std::string format_short(double value, int decimals) {
  std::string text = format_number(value, decimals);
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string count_of(int count, const std::string& noun, const std::string& plural) {
  const std::string& many = plural.empty() ? noun + "s" : plural;
  return std::to_string(count) + " " + (count == 1 ? noun : many);
}

}  // namespace drapewright
