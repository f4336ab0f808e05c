#pragma once

#include <map>
#include <optional>
#include <vector>

#include "core/geometry/medial/level.h"
#include "core/geometry/medial/piece_tree.h"

namespace drapewright::geometry::medial {

/// Polygons made of curves at one level, on the grid. Nothing when the curves do not fit together
/// as the diagram says they must: each piece has one outer ring, and there are as many as counted.
std::optional<Region> inner_pieces(const Diagram& diagram, const PieceTree& tree,
                                   const Level& level);

/// The same around the outline: the outline's polygons with all that lies within the level.
std::optional<Region> outer_pieces(const Diagram& diagram, const Level& level);

}  // namespace drapewright::geometry::medial
