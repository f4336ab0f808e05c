#pragma once

#include <array>
#include <optional>

#include "core/geometry/shape.h"

namespace drapewright::picture {

/// A plane seen by a pinhole camera: straight lines stay straight. The matrix maps (x, y, 1) to
/// (u w, v w, w); points with w > 0 lie before the camera. Plain numbers in either plane: which of
/// them are pixels and which cm, Calibration knows.
class Homography {
 public:
  using Matrix = std::array<double, 9>;  ///< by rows

  explicit Homography(const Matrix& matrix) : m_(matrix) {}

  /// Maps (0, 0), (1, 0), (1, 1), (0, 1) to the corners, in closed form (Heckbert, Fundamentals of
  /// Texture Mapping and Image Warping, 1989, section 2.2.3); w is positive all over a convex
  /// quadrilateral. The corners must go round a quadrilateral with an area.
  static Homography of_unit_square(const std::array<geometry::Point, 4>& corners);

  /// How much nearer than at w = 1 the picture is to its horizon; 0 on it, negative beyond.
  double w(geometry::Point p) const;
  /// Nothing where w is not positive.
  std::optional<geometry::Point> at(geometry::Point p) const;
  /// By how much `at` moves for a small step from p. @pre w(p) > 0
  geometry::Point step(geometry::Point p, geometry::Point step) const;

  /// The way back; w stays positive where it was. @pre the map has an inverse
  Homography inverse() const;
  /// First b, then a.
  friend Homography operator*(const Homography& a, const Homography& b);

 private:
  Matrix m_;
};

}  // namespace drapewright::picture
