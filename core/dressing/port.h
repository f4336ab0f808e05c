#pragma once

#include "core/dressing/plan.h"
#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// Puts the port of one drape on the largest circle of the group's top filler that lies outside
/// the no_port zones (DESIGN: step 6), and says what is wrong with that place.
/// @param no_port the united no_port zones
void place_port(Drape& drape, const Fill& fill, const geometry::Region& no_port,
                const wound::DressingSettings& settings, FindingList& findings);

}  // namespace drapewright::dressing
