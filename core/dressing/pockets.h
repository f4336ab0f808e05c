#pragma once

#include <optional>
#include <vector>

#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// One undermined pocket as it lies under the skin.
struct Pocket {
  geometry::Region region;  ///< beyond the wound's edge, between its two hours, out to its extent
  double extent_cm = 0;
};

/// The pockets of a wound; hours are seen from its centroid.
/// @returns nothing when an outset could not be verified
std::optional<std::vector<Pocket>> pockets_of(const PreparedWound& wound, double head_deg);

/// The cavity's outline at the depth of the pockets: the bed (outline less the wall's run-in) and
/// everything under the skin between the pockets' hours, less the islands.
/// @param run_in_cm of the wall at that depth
/// @returns nothing when an offset could not be verified
std::optional<geometry::Region> undermined_outline(const PreparedWound& wound, double run_in_cm,
                                                   double head_deg);

}  // namespace drapewright::dressing
