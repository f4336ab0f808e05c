#include "core/report/colour.h"

#include <algorithm>
#include <cmath>

namespace drapewright::report {

namespace {

double linear(std::uint8_t channel) {
  const double c = channel / 255.0;
  return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

std::uint8_t blend(std::uint8_t top, std::uint8_t ground, double alpha) {
  return static_cast<std::uint8_t>(std::lround(top * alpha + ground * (1 - alpha)));
}

}  // namespace

Colour ground_colour(Ground ground) {
  return ground == Ground::light ? Colour{255, 255, 255} : Colour{29, 33, 37};
}

Colour ink_colour(Ground ground) {
  return ground == Ground::light ? Colour{32, 32, 32} : Colour{236, 236, 236};
}

Colour over(Colour top, Colour ground) {
  const double alpha = top.alpha / 255.0;
  return {blend(top.red, ground.red, alpha), blend(top.green, ground.green, alpha),
          blend(top.blue, ground.blue, alpha)};
}

double relative_luminance(Colour colour) {
  return 0.2126 * linear(colour.red) + 0.7152 * linear(colour.green) + 0.0722 * linear(colour.blue);
}

double contrast_ratio(Colour a, Colour b) {
  const auto [low, high] = std::minmax({relative_luminance(a), relative_luminance(b)});
  return (high + 0.05) / (low + 0.05);
}

std::string hex(Colour colour) {
  static constexpr char digits[] = "0123456789abcdef";
  std::string text = "#";
  for (const std::uint8_t channel : {colour.red, colour.green, colour.blue}) {
    text += digits[channel >> 4];
    text += digits[channel & 15];
  }
  return text;
}

}  // namespace drapewright::report
