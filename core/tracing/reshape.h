#pragma once

#include <optional>
#include <utility>

#include "core/geometry/shape.h"

namespace drapewright::tracing {

/// Outlines altered by drawing over them. All lengths in cm; rings in, rings out.

/// The ring with one stretch of its edge drawn anew: from the place on the edge nearest the line's
/// start to the one nearest its end. Of the two stretches between those the one that runs nearer
/// the line gives way.
/// @return nothing when an end of the line lies farther than `reach_cm` from the edge, or both ends
///         lie at the same place
std::optional<geometry::Ring> retraced(const geometry::Ring& ring, const geometry::Ring& line,
                                       double reach_cm);

/// The ring with the stretch under the line smoothed: each of its corners moves towards what its
/// neighbours within `window_cm` make; the rest stays as it is. Same refusals as `retraced`.
std::optional<geometry::Ring> smoothed_stretch(const geometry::Ring& ring,
                                               const geometry::Ring& line, double reach_cm,
                                               double window_cm);

/// The two parts that a line across the ring cuts it into; the first is the larger.
/// @return nothing when the line does not run in over the edge and out again
std::optional<std::pair<geometry::Ring, geometry::Ring>> split(const geometry::Ring& ring,
                                                               const geometry::Ring& line);

}  // namespace drapewright::tracing
