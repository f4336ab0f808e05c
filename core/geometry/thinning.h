#pragma once

#include <cstdint>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Outlines and lines on fewer points: before they are offset, and after they were drawn by hand.

/// The ring on fewer of its points: no point of either lies farther than `tolerance_cm` from the
/// other (Douglas and Peucker's method, from memory).
/// @return fewer than three points when the ring is narrower than the tolerance
Ring thinned(const Ring& ring, double tolerance_cm);

/// The same for an open line: both ends stay.
Ring thinned_line(const Ring& line, double tolerance_cm);

/// Which side of a ring loses its small dents: the region grows or shrinks a little by it.
enum class Dents { fill_outer, cut_off };

/// The ring without dents whose mouth is at most `mouth_cm` wide, or bumps whose foot is. They
/// are bridged by a straight edge that leaves the whole chain on one side, no part of it farther
/// than the mouth's width away. A curve at distance d >= mouth_cm hardly sees them: it moves by at
/// most d - sqrt(d^2 - mouth^2 / 4), outwards for an outset, inwards for an inset.
/// @pre the region lies to the left of the ring's edges
Ring without_dents(const Ring& ring, double mouth_cm, Dents dents);

/// The ring with each point moved by up to `most_cm` in x and y, the same for the same seed.
/// Exact ties (parallel edges, equal distances) are what general-purpose offsetting fails on.
Ring jittered(Ring ring, double most_cm, std::uint64_t& seed);

}  // namespace drapewright::geometry
