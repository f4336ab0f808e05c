#pragma once

#include <vector>

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// The parts of a wound that its top layer does not reach, each with area and place.
/// @param arms  farther from the filler than the layer's own inset and a little more
void remark_on_arms(const wound::Wound& wound, geometry::Region arms, double inset_cm,
                    FindingList& findings);

/// Pieces that are small, thin, or wider than the opening that they go in through.
void remark_on_pieces(const PreparedWound& wound, const std::vector<Layer>& layers,
                      FindingList& findings);

/// How many pieces each wound takes, where it is more than one.
void remark_on_piece_counts(const Plan& plan, FindingList& findings);

}  // namespace drapewright::dressing
