#pragma once

#include "core/geometry/shape.h"
#include "core/picture/homography.h"
#include "core/picture/picture.h"

namespace drapewright::picture {

/// Says that a reference was checked before, and that its places have moved since by less than a
/// pixel.
struct Unchecked {};

/// Turns a picture's pixels into cm and back. It can only be made from a reference, so a picture
/// without one cannot be measured.
///
/// The drawing's origin is the middle of the reference; y points up as the picture does there. Two
/// places give a scale alone: right for a picture taken square on, since a tilt of t degrees
/// shortens what lies along the slope to cos t of itself. Four corners of a square take the tilt
/// out, for everything that lies in the square's plane.
class Calibration {
 public:
  /// @throws InputError for what `check(Reference)` refuses
  explicit Calibration(const Reference& reference);
  Calibration(const Reference& reference, Unchecked);

  /// @throws InputError for a place beyond the horizon of the square's plane, or so near to it that
  ///         it lies ten times as far from the camera as the square
  geometry::Point to_cm(Pixel place) const;
  geometry::Ring to_cm(const PixelChain& places) const;
  /// @throws InputError for a point behind the camera
  Pixel to_pixel(geometry::Point point) const;
  PixelChain to_pixels(const geometry::Ring& points) const;

  /// How long a step of one pixel is there, in the direction in which it is longest.
  double cm_per_pixel(Pixel place) const;

  bool takes_out_tilt() const { return takes_out_tilt_; }

 private:
  Homography to_picture_;
  Homography to_plane_;
  double w_at_reference_ = 1;  ///< of to_plane_
  bool takes_out_tilt_ = false;
};

/// Four corners in the order in which they go round, counter-clockwise as the picture is seen.
std::array<Pixel, 4> in_order(const std::array<Pixel, 4>& corners);

}  // namespace drapewright::picture
