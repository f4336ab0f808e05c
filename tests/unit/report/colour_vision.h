#pragma once

#include <array>
#include <cmath>

#include "core/report/colour.h"

namespace drapewright::report {

/// 3 x 3 matrices on linear RGB for full dichromacy: Machado, Oliveira, Fernandes, "A
/// physiologically-based model for simulation of color vision deficiency", IEEE Transactions on
/// Visualization and Computer Graphics 2009;15(6):1291, severity 1.0. From memory: each row must
/// sum to 1 (grey stays grey), which the test checks.
using Matrix = std::array<std::array<double, 3>, 3>;
inline constexpr Matrix protanopia{{{0.152286, 1.052583, -0.204868},
                                    {0.114503, 0.786281, 0.099216},
                                    {-0.003882, -0.048116, 1.051998}}};
inline constexpr Matrix deuteranopia{{{0.367322, 0.860646, -0.227968},
                                      {0.280085, 0.672501, 0.047413},
                                      {-0.011820, 0.042940, 0.968881}}};
inline constexpr Matrix tritanopia{{{1.255528, -0.076749, -0.178779},
                                    {-0.078411, 0.930809, 0.147602},
                                    {0.004733, 0.691367, 0.303900}}};

using Triple = std::array<double, 3>;

inline Triple linear_rgb(Colour colour) {
  const auto linear = [](double c) {
    c /= 255;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return {linear(colour.red), linear(colour.green), linear(colour.blue)};
}

inline Triple seen_with(const Matrix& m, const Triple& rgb) {
  Triple seen{};
  for (std::size_t row = 0; row < 3; ++row) {
    for (std::size_t i = 0; i < 3; ++i) seen[row] += m[row][i] * rgb[i];
    seen[row] = std::min(1.0, std::max(0.0, seen[row]));
  }
  return seen;
}

/// CIE 1976 L*a*b* of linear sRGB, D65.
inline Triple lab(const Triple& rgb) {
  const double x = (0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2]) / 0.9505;
  const double y = 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
  const double z = (0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2]) / 1.089;
  const auto f = [](double t) { return t > 0.008856 ? std::cbrt(t) : 7.787 * t + 16.0 / 116; };
  return {116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))};
}

/// CIE 1976 colour difference.
inline double difference(const Triple& a, const Triple& b) {
  return std::hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

}  // namespace drapewright::report
