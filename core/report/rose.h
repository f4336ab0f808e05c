#pragma once

#include "core/report/drawing.h"

namespace drapewright::report {

/// The compass rose: twelve clock hours around an arrow to the patient's head.
/// @param centre_mm  its middle
/// @param radius_mm  of the dial; figures stand outside it
DrawnLayer draw_rose(geometry::Point centre_mm, double radius_mm, double head_direction_deg,
                     double text_mm);

/// From the rose's middle to the outermost of its words.
double rose_reach_mm(double radius_mm, double text_mm);

}  // namespace drapewright::report
