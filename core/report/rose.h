#pragma once

#include "core/practice/body_sites.h"
#include "core/report/drawing.h"

namespace drapewright::report {

/// The compass rose: twelve clock hours around an arrow to 12, which says what 12 points to.
/// @param centre_mm  its middle
/// @param radius_mm  of the dial; figures stand outside it
/// @param head_direction_deg  of 12 o'clock
DrawnLayer draw_rose(geometry::Point centre_mm, double radius_mm, double head_direction_deg,
                     double text_mm, practice::Twelve twelve = practice::Twelve::head);

/// From the rose's middle to the outermost of its words.
double rose_reach_mm(double radius_mm, double text_mm);

}  // namespace drapewright::report
