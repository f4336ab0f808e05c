#pragma once

#include <cmath>

#include "core/geometry/shape.h"
#include "core/picture/pixel.h"

namespace drapewright::support {

/// A pinhole camera over the plane z = 0, worked out from angles and distances, without any
/// homography: an independent judge of calibrations. It looks at the origin from `distance_cm`,
/// tilted by `tilt_deg` away from the plane's normal towards `towards_deg`, and turned about its
/// own axis by `roll_deg`.
struct DrawnCamera {
  double tilt_deg = 0;
  double towards_deg = 0;
  double roll_deg = 0;
  double distance_cm = 40;
  double focal_px = 3000;
  picture::Pixel middle{2000, 1500};

  picture::Pixel see(geometry::Point p, double height_cm = 0) const {
    using geometry::radians;
    // Turned so that the camera leans along x.
    const double c = std::cos(radians(towards_deg)), s = std::sin(radians(towards_deg));
    const double x = c * p.x + s * p.y, y = -s * p.x + c * p.y;
    const double ct = std::cos(radians(tilt_deg)), st = std::sin(radians(tilt_deg));
    const double right = x * ct - height_cm * st, depth = distance_cm - x * st - height_cm * ct;
    // Back, and rolled.
    const double turn = radians(towards_deg + roll_deg);
    const double u = std::cos(turn) * right - std::sin(turn) * y;
    const double v = std::sin(turn) * right + std::cos(turn) * y;
    return {middle.x + focal_px * u / depth, middle.y - focal_px * v / depth};
  }

  picture::PixelChain see(const geometry::Ring& ring) const {
    picture::PixelChain out;
    for (const geometry::Point p : ring) out.push_back(see(p));
    return out;
  }
};

}  // namespace drapewright::support
