#pragma once

#include <optional>
#include <string>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Why a ring or a polygon is not a shape that can be planned, in words for the user.
struct ShapeFault {
  std::string problem;   ///< what was found ("the outline crosses itself")
  std::string expected;  ///< what would be right
  Point where;
};

/// Checks one ring: at least three distinct points, finite, no larger than `max_extent_cm`
/// across, not crossing itself, with area. Repeated points, collinear points, zero-width spikes
/// and a ring that only touches itself are fine: `tidy` mends them.
std::optional<ShapeFault> find_fault(const Ring& ring, double max_extent_cm);

/// Checks that the islands are faultless, lie inside the outline and do not overlap each other or
/// cross its edge. Touching is fine.
std::optional<ShapeFault> find_island_fault(const Ring& outline, const std::vector<Ring>& islands,
                                            double max_extent_cm);

/// Whether a polygon is no wider than an overlay's grid can leave between two edges that are one:
/// there is nothing to cut there.
bool is_thread(const Polygon& polygon);

/// What `tidy` made of a polygon.
struct Tidied {
  Region region;           ///< usually one polygon; more where the outline touched itself
  int spikes_removed = 0;  ///< zero-width spikes cut off
  bool split = false;      ///< the outline touched itself and fell into several polygons
  Point where;             ///< of the first thing mended
};

/// Mends what is harmless in a faultless polygon: repeated and collinear points, zero-width
/// spikes, self-touching; gives the rings their orientation. The area is unchanged to within
/// edge length x tolerance::grid_cm.
/// @pre find_fault and find_island_fault found nothing
Tidied tidy(const Polygon& polygon);

}  // namespace drapewright::geometry
