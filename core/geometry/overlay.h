#pragma once

#include <span>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Set operations on regions, computed on an integer grid of tolerance::grid_cm, where they are
/// robust (doubles reported gross false overlaps for touching shapes). Results are tidy regions:
/// outer rings counter-clockwise, holes clockwise; coordinates move by at most one grid spacing, so
/// shapes that touch along a slanted edge may be united or stay a grid spacing apart. What is
/// narrower than the grid on the average (a sliver) is left out.
/// @throws std::invalid_argument when the shapes are not finite or spread over more than 100 m

Region unite(std::span<const Region> regions);
Region unite(const Region& a, const Region& b);
Region intersect(const Region& a, const Region& b);
Region subtract(const Region& a, const Region& b);

/// True when the insides share an area of more than `least_cm2`.
bool overlap(const Region& a, const Region& b, double least_cm2 = 1e-6);

}  // namespace drapewright::geometry
