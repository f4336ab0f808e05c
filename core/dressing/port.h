#pragma once

#include "core/dressing/bridge.h"
#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// Puts the port of one drape (DESIGN: step 6): joins its pieces of filler by bridges, takes the
/// user's place or the one with the most room on filler where the base keeps clear of the zones
/// too, and leads a bridge away where none is good enough or one is wanted. Writes the drape's port
/// and bridges; what is wrong with the place is a finding.
/// @param pieces  the group's top filler, piece by piece as seen in the opening
void place_port(Drape& drape, const std::vector<geometry::Region>& pieces,
                const GroupGround& ground, const wound::DressingSettings& settings,
                FindingList& findings);

/// Once the film is cut: whether the port's base lies wholly on it.
void check_port_base(const Drape& drape, FindingList& findings);

}  // namespace drapewright::dressing
