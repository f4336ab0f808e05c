#pragma once

#include <string>

#include "core/base/tolerances.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

class ClearanceMap;

/// The outcome of an offset. One that could not be verified has no region: it must become a
/// finding, never a drawing.
struct Offset {
  Region region;  ///< empty when verified and nothing is left at that distance
  bool verified = false;
  int attempts = 0;   ///< how many times it was computed until it passed its own check
  std::string doubt;  ///< why the last attempt was refused; empty when verified
};

/// The part of `region` that is at least `distance_cm` from its edge (holes' edges included).
/// Every point of the result's edge keeps that distance and is at most `max_error_cm` farther.
/// docs/geometry.md says how that is made sure of.
/// @param region        tidy polygons (see `tidy`), extent up to some 200 cm
/// @param distance_cm   finite, >= 0
/// @param max_error_cm  finite, > 0, no less than some 1e-9 of the distance
/// @throws std::invalid_argument for arguments outside their domain
Offset inset(const Region& region, double distance_cm, double max_error_cm = tolerance::offset_cm);

/// All points within `distance_cm` of `region`, holes closed where they are. Every
/// point of the result's edge is as far from the region or at most `max_error_cm` farther. Same
/// domain and errors as `inset`.
Offset outset(const Region& region, double distance_cm, double max_error_cm = tolerance::offset_cm);

/// The same from a map that was built before: far cheaper from the second question on. A map that
/// has a doubt hands the question on to a general-purpose buffer that is checked as strictly.
Offset inset(const ClearanceMap& map, double distance_cm,
             double max_error_cm = tolerance::offset_cm);
Offset outset(const ClearanceMap& map, double distance_cm,
              double max_error_cm = tolerance::offset_cm);

}  // namespace drapewright::geometry
