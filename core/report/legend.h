#pragma once

#include <string>
#include <vector>

#include "core/report/drawing.h"
#include "core/report/sketch.h"

namespace drapewright::report {

/// The layers of a sketch that a legend explains, in the order of reading: the wound first.
std::vector<LayerKind> legend_layers(const Sketch& sketch);

/// One swatch: a piece of the layer as it is drawn, in a box of the given size.
DrawnLayer draw_swatch(LayerKind kind, const geometry::Box& box_mm);

/// Rows of swatch and title in as many columns as the width allows, then `notes` as plain lines.
struct LegendBlock {
  DrawnLayer layer;
  double height_mm = 0;
};
LegendBlock draw_legend(const std::vector<LayerKind>& kinds, const std::vector<std::string>& notes,
                        geometry::Point upper_left_mm, double width_mm, double text_mm);

/// What must be known to read the figures in a drawing.
std::vector<std::string> legend_notes(const Sketch& sketch);

}  // namespace drapewright::report
