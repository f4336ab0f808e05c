#pragma once

#include <vector>

#include "core/picture/calibration.h"

namespace drapewright::picture {

/// Unrolls what was photographed square on to a limb: the limb is a round cylinder of the typed
/// girth, and what is flat in the picture lies round it. The reference is taken to lie on the
/// limb's nearest line, where it touches a plane square to the camera's axis; the camera stands
/// over the picture's middle. From far away (no distance given) a place x off the axis in the
/// picture lies at theta = asin(x / r), x cm become r theta; lengths along the axis stay. From
/// nearby the rays spread, and both change: the place is where the ray through it meets the
/// cylinder.
class Limb {
 public:
  /// @param middle  of the whole picture
  /// @throws InputError for what `check(Picture)` refuses
  Limb(const LimbView& view, const Calibration& calibration, Pixel middle);

  /// The place of a point of the flat drawing when the limb's skin is laid out flat; what lies on
  /// the axis stays.
  /// @throws InputError beyond the limb's visible edge, with the place
  geometry::Point unrolled(geometry::Point flat) const;
  /// Straight edges become curves: corners are added until none bends off by more than 0.005 cm.
  geometry::Ring unrolled(const geometry::Ring& flat) const;
  /// The way back. @throws InputError for a place on the side that the camera did not see
  geometry::Point flat(geometry::Point unrolled) const;

  /// How far round the limb a point of the flat drawing lies from the axis line, 0 to 90.
  double turn_deg(geometry::Point flat) const;

  /// Across the axis, in the flat or the unrolled drawing.
  double across_deg() const;

 private:
  struct Local {
    double along = 0;
    double across = 0;
  };
  struct OnSkin {
    double along = 0;
    double angle = 0;  ///< from the axis line, radians
  };
  Local local(geometry::Point p) const;
  geometry::Point drawn(Local p) const;
  OnSkin on_skin(geometry::Point flat) const;
  void append_edge(geometry::Point from, geometry::Point to, int depth, geometry::Ring& out) const;

  geometry::Point origin_;     ///< on the axis line
  geometry::Point direction_;  ///< of the axis, a unit vector
  double radius_cm_ = 0;
  std::optional<double> distance_cm_;  ///< from the lens to the plane of the reference
  Local camera_;                       ///< the place under it in that plane
};

/// By how much an outline and its unrolled self differ.
struct UnrolledDifference {
  double flat_area_cm2 = 0;
  double unrolled_area_cm2 = 0;
  double flat_width_cm = 0;  ///< across the limb's axis
  double unrolled_width_cm = 0;
  double farthest_deg = 0;  ///< how far round the limb the outline reaches

  double area_share() const { return unrolled_area_cm2 / flat_area_cm2 - 1; }
  double width_share() const { return unrolled_width_cm / flat_width_cm - 1; }
};

/// @param flat  an outline with an area
/// @throws InputError as `Limb::unrolled`
UnrolledDifference unrolled_difference(const Limb& limb, const geometry::Ring& flat);

/// "unrolled: area + 12.3 %, width across the limb + 9.1 %; it reaches 55 degrees round".
std::string in_words(const UnrolledDifference& difference);

}  // namespace drapewright::picture
