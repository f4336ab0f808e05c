#pragma once

#include <cstdint>
#include <string>

namespace drapewright::report {

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  std::uint8_t alpha = 255;
  friend bool operator==(const Colour&, const Colour&) = default;
};

/// What is drawn upon: paper and light windows, or dark windows.
enum class Ground { light, dark };

Colour ground_colour(Ground ground);
/// Text, rulers, frames and dimension lines.
Colour ink_colour(Ground ground);

/// `top` as it looks on an opaque ground.
Colour over(Colour top, Colour ground);

/// Relative luminance of an opaque colour, 0 (black) to 1 (white). WCAG 2.2, definition of
/// "relative luminance".
double relative_luminance(Colour colour);
/// 1 to 21. WCAG 2.2, definition of "contrast ratio".
double contrast_ratio(Colour a, Colour b);

/// "#0072b2"; the alpha is left out.
std::string hex(Colour colour);

}  // namespace drapewright::report
