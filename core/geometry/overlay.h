#pragma once

#include <span>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// Set operations on regions, computed on an integer grid of tolerance::grid_cm, where they are
/// robust (doubles reported gross false overlaps for touching shapes). Results are tidy regions:
/// outer rings counter-clockwise, holes clockwise; coordinates move by at most one grid spacing.

Region unite(std::span<const Region> regions);
Region unite(const Region& a, const Region& b);
Region intersect(const Region& a, const Region& b);
Region subtract(const Region& a, const Region& b);

/// True when the insides share an area of more than `least_cm2`.
bool overlap(const Region& a, const Region& b, double least_cm2 = 1e-6);

}  // namespace drapewright::geometry
