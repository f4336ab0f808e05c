#pragma once

#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// A stretch of a line, in cm from its start.
struct Span {
  double from_cm = 0;
  double to_cm = 0;
  double length_cm() const { return to_cm - from_cm; }
  friend bool operator==(const Span&, const Span&) = default;
};

/// The stretches of a segment that lie inside a region, in order. Where the segment runs along an
/// edge, the edge counts as inside or not as a whole: a segment shifted by any amount, however
/// small, would give the same.
/// @returns none for a segment without length
std::vector<Span> spans_inside(const Segment& segment, const Region& region);

}  // namespace drapewright::geometry
