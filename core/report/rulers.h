#pragma once

#include "core/report/drawing.h"
#include "core/report/scale_map.h"

namespace drapewright::report {

/// Steps of grid and rulers, in cm, chosen so that lines and figures keep their distance.
struct RulerSteps {
  double fine_cm = 1;    ///< fine grid lines and short ticks
  double coarse_cm = 5;  ///< strong grid lines and long ticks
  double label_cm = 1;   ///< every how many cm a figure stands
};
RulerSteps ruler_steps(double mm_per_cm);

/// The two grid layers over a field in mm.
std::vector<DrawnLayer> draw_grid(const ScaleMap& map, const geometry::Box& field_mm);

/// Rulers in cm along the field's upper and left edges, `band_mm` wide, outside of it, with a
/// frame around the field.
DrawnLayer draw_rulers(const ScaleMap& map, const geometry::Box& field_mm, double band_mm,
                       double text_mm);

}  // namespace drapewright::report
