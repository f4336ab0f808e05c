#pragma once

#include <vector>

#include "core/report/drawing.h"
#include "core/report/scale_map.h"
#include "core/report/sketch.h"

namespace drapewright::report {

/// Where text may stand when a sketch is laid out at a scale, in mm.
struct AnnotationField {
  geometry::Box field;               ///< captions and dimension lines stay inside
  std::vector<geometry::Box> taken;  ///< by a legend or a rose that lies over the field
  double text_mm = 3;
};

struct Annotations {
  std::vector<DrawnLayer> layers;     ///< dimension lines, captions, leaders
  std::vector<std::string> left_out;  ///< captions that found no room, to be listed elsewhere
};

/// Lays out a sketch's captions and dimension lines at a scale. No two texts overlap; a caption
/// that had to move away from its place is tied to it by a thin line. Captions whose place lies
/// outside the field (the view is zoomed in) are dropped in silence.
/// @param hidden layers whose captions and dimension lines are left out
Annotations annotate(const Sketch& sketch, const ScaleMap& map, const AnnotationField& room,
                     const std::vector<LayerKind>& hidden = {});

}  // namespace drapewright::report
