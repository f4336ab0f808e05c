#pragma once

#include "core/cutting/layout.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::cutting {

inline geometry::Polygon box(double length, double width, geometry::Point low = {}) {
  return {{low, {low.x + length, low.y}, {low.x + length, low.y + width}, {low.x, low.y + width}},
          {}};
}
/// A square frame with a square hole in its middle.
inline geometry::Polygon frame(double outer, double inner) {
  const double a = (outer - inner) / 2, b = (outer + inner) / 2;
  return {box(outer, outer).outer, {{{a, a}, {a, b}, {b, b}, {b, a}}}};
}
/// A letter L: `size` high and long, its limbs `limb` wide.
inline geometry::Polygon ell(double size, double limb) {
  return {{{0, 0}, {size, 0}, {size, limb}, {limb, limb}, {limb, size}, {0, size}}, {}};
}
/// A star of five points, concave.
inline geometry::Polygon star(double outer, double inner) {
  geometry::Ring ring;
  for (int k = 0; k < 10; ++k) {
    const double angle = geometry::radians(36.0 * k + 90);
    const double r = k % 2 == 0 ? outer : inner;
    ring.push_back({r * std::cos(angle), r * std::sin(angle)});
  }
  return {ring, {}};
}

}  // namespace drapewright::cutting
