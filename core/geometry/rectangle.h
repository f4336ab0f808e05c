#pragma once

#include <optional>
#include <span>

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// The rectangle of least area, at any angle, that holds all points (it has a side along an edge
/// of the convex hull). @pre points is not empty
Rectangle smallest_enclosing_rectangle(std::span<const Point> points);

/// Where and at which angle a rectangle of the given sides holds all points, if it can. The test
/// is exact: between two edge directions of the hull every extent is a piece of a cosine, so the
/// angles at which it fits are found in closed form, not by trying. Of the angles that fit, the
/// one with the most even margin is returned; length_cm and width_cm are echoed.
/// @param slack_cm how much a side may be short and still count, to absorb rounding; >= 0
/// @throws std::invalid_argument for sides that are not positive and finite
std::optional<Rectangle> place_in_rectangle(std::span<const Point> points, double length_cm,
                                            double width_cm, double slack_cm);

/// Its corners, counter-clockwise.
Ring corners(const Rectangle& rectangle);

}  // namespace drapewright::geometry
