#pragma once

#include <string>

#include "core/geometry/edge_tree.h"
#include "core/geometry/shape.h"

namespace drapewright::geometry {

enum class Direction { inwards, outwards };

/// What an offset is checked against. For this room's own use.
struct OffsetTask {
  const Region& source;
  const EdgeTree& source_edges;
  Direction direction;
  double distance_cm;
  double max_error_cm;
};

/// The shape that stood in for the source when the offset was computed (thinned, jittered), and
/// how far from its edge the result may lie at most.
struct StandIn {
  const Region& region;
  double farthest_cm;
};

/// Why `result` is not the source's offset; empty when it is. See docs/geometry.md for what is
/// checked and why that is enough.
std::string find_doubt(const OffsetTask& task, const StandIn& stand_in, const Region& result);

}  // namespace drapewright::geometry
