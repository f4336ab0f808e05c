#pragma once

#include "core/geometry/medial/clearance_map.h"
#include "core/geometry/medial/level.h"
#include "core/geometry/medial/piece_tree.h"

namespace drapewright::geometry::medial {

/// The shortest way across at a saddle, from edge to edge. In grid units.
Segment across(const Diagram& diagram, const Saddle& saddle);

/// See ClearanceMap::unreached. In cm, in the drawing.
/// @param level     the clearance that filler keeps from the edge, and how fine arcs are
/// @param reach_cm  how far filler serves
std::vector<Arm> unreached_arms(const Diagram& diagram, const Frame& frame, const Level& level,
                                double reach_cm);

}  // namespace drapewright::geometry::medial
