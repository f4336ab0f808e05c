#pragma once

#include <vector>

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// The parts of a wound that its top layer does not reach, each with area and place.
/// @param arms  farther from the filler than the layer's own inset and a little more
void remark_on_arms(const wound::Wound& wound, geometry::Region arms, double inset_cm,
                    FindingList& findings);

/// Layers that are thin, or that hang together by a neck.
/// @param layers  of this wound
void remark_on_layers(const PreparedWound& wound, const std::vector<Layer>& layers,
                      FindingList& findings);

/// Pieces that are small, out of sight, or wider than the opening that they go in through.
/// @param layers  with the pieces as they are cut; those of other wounds are passed over
void remark_on_pieces(const PreparedWound& wound, const std::vector<Layer>& layers,
                      FindingList& findings);

/// How many pieces each wound takes, where it is more than one.
void remark_on_piece_counts(const Plan& plan, FindingList& findings);

}  // namespace drapewright::dressing
