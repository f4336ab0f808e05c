#include "core/base/numbers.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "core/base/say.h"

namespace drapewright {

namespace {

std::string without_zeros(std::string text) {
  if (text.find('.') == std::string::npos) return text;
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string for_people(double value, std::string text) {
  if (std::isnan(value)) return say("not a number");
  if (std::isinf(value)) return value > 0 ? say("infinite") : say("-infinite");
  std::replace(text.begin(), text.end(), '.', language().decimal_mark);
  return text;
}

}  // namespace

std::string plain_number(double value, int decimals) {
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

std::string plain_short(double value, int decimals) {
  return without_zeros(plain_number(value, decimals));
}

std::string format_number(double value, int decimals) {
  return for_people(value, plain_number(value, decimals));
}

std::string format_short(double value, int decimals) {
  return for_people(value, plain_short(value, decimals));
}

}  // namespace drapewright
