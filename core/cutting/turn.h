#pragma once

#include <cmath>

#include "core/geometry/shape.h"

namespace drapewright::cutting {

/// A turn about the origin, exact at multiples of 90 degrees, so that shapes with whole
/// coordinates keep them and exact fits stay exact.
struct Turn {
  double cosine = 1;
  double sine = 0;

  static Turn by_deg(double angle_deg) {
    const double quarters = angle_deg / 90;
    if (quarters == std::floor(quarters)) {
      const int quarter = static_cast<int>(std::fmod(quarters, 4) + 4) % 4;
      constexpr double cosines[] = {1, 0, -1, 0};
      constexpr double sines[] = {0, 1, 0, -1};
      return {cosines[quarter], sines[quarter]};
    }
    return {std::cos(geometry::radians(angle_deg)), std::sin(geometry::radians(angle_deg))};
  }
  geometry::Point operator()(geometry::Point p) const {
    return {cosine * p.x - sine * p.y, sine * p.x + cosine * p.y};
  }
};

}  // namespace drapewright::cutting
