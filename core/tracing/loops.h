#pragma once

#include <optional>
#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::tracing {

/// Where a line crosses itself first, between its corners.
/// @param closed  whether the last point joins the first
std::optional<geometry::Point> first_crossing(const geometry::Ring& line, bool closed);

/// The loops that a ring falls into when it is cut wherever it crosses itself, the largest first;
/// none crosses itself. Loops without an area are left out. Time grows by the square of the
/// corners: for traces that were thinned.
std::vector<geometry::Ring> loops_at_crossings(const geometry::Ring& ring);

}  // namespace drapewright::tracing
