#pragma once

#include <vector>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// On which side of the true arcs the chords of a band's round parts lie.
enum class Chords { inside, outside };

/// Everything within `reach_cm` of a chain of straight steps, drawn with chords that lie on one
/// side of the true edge and no farther from it than `max_error_cm`. One step takes no overlay.
/// @param line  at least one point, all finite; points that repeat are fine
/// @throws std::invalid_argument for an empty line, or lengths that are not positive and finite
Region band(const std::vector<Point>& line, double reach_cm, Chords chords, double max_error_cm);

}  // namespace drapewright::geometry
