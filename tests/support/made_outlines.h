#pragma once

#include <cstdint>
#include <random>

#include "core/geometry/shape.h"

namespace drapewright::support {

/// Outlines of the kinds that have broken offsets: the same ones for the same seed, in cm, valid
/// and without repeated points, unless said otherwise.
class OutlineMaker {
 public:
  explicit OutlineMaker(std::uint64_t seed) : random_(seed) {}

  /// A star with `corners` tips of uneven length.
  geometry::Ring star(int corners, double radius);
  /// A soft closed curve of a few waves.
  geometry::Ring blob(int corners, double radius);
  /// A band of some width wound round a centre.
  geometry::Ring spiral(double turns, double width, double gap, int corners);
  /// A back with teeth, each `width` wide.
  geometry::Ring comb(int teeth, double width, double gap, double length);
  /// The edge of a disc-like set of pixels, corner by corner, as traced from a mask.
  geometry::Ring staircase(int corners, double radius);
  /// Bars of width `step` side by side whose edges lie 1 to 200 grid units off the axes. A few in
  /// a hundred touch themselves.
  geometry::Ring skyline(int steps, double step);
  /// Two squares joined by a corridor of exactly this width.
  geometry::Ring dumbbell(double square, double corridor_width, double corridor_length);
  /// A blob with a thin arm of a constant width.
  geometry::Ring armed_blob(double radius, double arm_width, double arm_length);
  /// A blob with an island at `gap` from its edge.
  geometry::Polygon with_island(double radius, double island_radius, double gap);

  double between(double low, double high);
  int whole(int low, int high);  ///< both included

 private:
  std::mt19937_64 random_;
};

}  // namespace drapewright::support
