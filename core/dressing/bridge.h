#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/dressing/plan.h"
#include "core/geometry/shape.h"

namespace drapewright::dressing {

/// What a bridge may not cross and where a port may not sit, around one group of wounds. Refers to
/// regions that outlive it.
struct BridgeGround {
  const geometry::Region& group;       ///< the group's own wounds
  const geometry::Region& all_wounds;  ///< of the whole case
  const geometry::Region& no_film;
  const geometry::Region& no_port;
};

/// A strip of filler from `filler` to the nearest place on intact skin where the port's base lies
/// clear of every zone and every wound, ending in a pad that holds the aperture. Runs the shortest
/// way that keeps the whole strip clear of zones and of other groups' wounds.
/// @returns nothing when every way is barred or an offset could not be verified
std::optional<Bridge> bridge_to_port(const geometry::Region& filler, const BridgeGround& ground,
                                     const wound::DressingSettings& settings);

/// Strips that join separate pieces of filler along the shortest tree, so that one port serves
/// them all. `barred` lists the pieces that no way leads to.
struct JoinedFiller {
  std::vector<Bridge> bridges;
  std::vector<std::size_t> barred;
};
JoinedFiller join_filler(const geometry::Region& pieces, const BridgeGround& ground,
                         const wound::DressingSettings& settings);

}  // namespace drapewright::dressing
