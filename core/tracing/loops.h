#pragma once

#include <optional>
#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::tracing {

/// Where a line crosses itself first, between its corners.
/// @param closed  whether the last point joins the first
std::optional<geometry::Point> first_crossing(const geometry::Ring& line, bool closed);

/// The same for the edge that was drawn last alone, against all before it: for a line that grows.
std::optional<geometry::Point> last_edge_crossing(const geometry::Ring& line);

/// Whether moving one corner made an edge at it cross another of the ring.
std::optional<geometry::Point> crossing_at_corner(const geometry::Ring& ring, std::size_t corner);

/// A hand that goes round and on past its start crosses its own line once, near both ends, or runs
/// on beside it: the ring from that crossing round to itself, or up to where it came nearest to its
/// start. Any other line comes back as it is.
geometry::Ring without_overshoot(const geometry::Ring& line);

/// The loops that a ring falls into when it is cut wherever it crosses itself, the largest first;
/// none crosses itself. Loops without an area are left out. Time grows by the square of the
/// corners: for traces that were thinned.
std::vector<geometry::Ring> loops_at_crossings(const geometry::Ring& ring);

}  // namespace drapewright::tracing
