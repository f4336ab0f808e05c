#pragma once

#include "core/geometry/shape.h"

namespace drapewright::geometry {

/// The clock method: 12 o'clock points to the patient's head, hours run clockwise as the clinician
/// looks at the wound. `head_deg` is the direction in the drawing that points to the head.

/// The hour at which p lies as seen from the centre, in (0, 12].
double clock_hour(Point centre, Point p, double head_deg);
/// The direction of an hour, counter-clockwise from +x, in [0, 360).
double clock_direction_deg(double hour, double head_deg);
/// The whole hour 1..12 whose sector (half an hour to either side) holds p.
int clock_sector(Point centre, Point p, double head_deg);
/// How many hours a range spans going clockwise, in (0, 12]; a range from an hour to itself is the
/// whole clock.
double clock_span(double from_hour, double to_hour);

}  // namespace drapewright::geometry
