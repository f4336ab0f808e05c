#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "core/dressing/skin.h"
#include "core/geometry/shape.h"

namespace drapewright::dressing {

/// A strip of filler from `filler` to the nearest place on intact skin where the port's base lies
/// clear of every zone and every wound, ending in a pad that holds the aperture. Runs the shortest
/// way that keeps the whole strip clear of zones and of other groups' wounds.
/// @returns nothing when every way is barred or an offset could not be verified
std::optional<Bridge> bridge_to_port(const geometry::Region& filler, const GroupGround& ground,
                                     const wound::DressingSettings& settings);

/// Everything within `by_cm` of a bridge's strip and pad, on the safe side and no farther than
/// tolerance::offset_cm.
geometry::Region reach_of(const Bridge& bridge, double by_cm);

/// Strips that join separate pieces of filler along the shortest tree, so that one port serves
/// them all. A piece that reaches into pockets may be seen in several parts: they hang together
/// under the skin. `barred` lists the pieces that no way leads to.
struct JoinedFiller {
  std::vector<Bridge> bridges;
  std::vector<std::size_t> barred;
};
JoinedFiller join_filler(const std::vector<geometry::Region>& pieces, const GroupGround& ground,
                         const wound::DressingSettings& settings);

}  // namespace drapewright::dressing
