#pragma once

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// Cuts the filler of all wounds, layer by layer from the skin down (DESIGN: step 3): each layer
/// is the outline inset by inset_cm plus the wall's run-in at that layer's underside.
/// @param wounds    their order is that of the layers
/// @param progress  asked before every wound
Fill fill_wounds(const std::vector<PreparedWound>& wounds, const wound::Case& value,
                 FindingList& findings, const Progress& progress);

/// Counts and adds up the pieces of layers and strips.
void sum_up(Fill& fill);

/// The top layer's pieces of the named wounds, as far as they lie in the opening: what reaches
/// under the skin carries no port.
geometry::Region top_filler(const Fill& fill, const std::vector<PreparedWound>& wounds,
                            const std::vector<std::string>& ids);

/// The same piece by piece: one that reaches into pockets may be seen in several parts.
std::vector<geometry::Region> top_pieces(const Fill& fill, const std::vector<PreparedWound>& wounds,
                                         const std::vector<std::string>& ids);

}  // namespace drapewright::dressing
