#pragma once

#include <vector>

namespace drapewright::picture {

/// A place in a picture, in pixels: x to the right, y down, (0, 0) the upper left corner of the
/// upper left pixel, whose middle is (0.5, 0.5). A type of its own: a pixel is not a length, and
/// only a Calibration turns it into cm.
struct Pixel {
  double x = 0;
  double y = 0;
  friend bool operator==(const Pixel&, const Pixel&) = default;
};

/// A chain of places; as an outline it is closed, its first place not repeated.
using PixelChain = std::vector<Pixel>;

}  // namespace drapewright::picture
