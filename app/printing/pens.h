#pragma once

#include <QBrush>
#include <QColor>
#include <QPainterPath>
#include <QPen>

#include "core/geometry/shape.h"
#include "core/report/layer_style.h"

namespace drapewright::printing {

QColor to_qcolor(report::Colour colour);

/// The layer's outline pen, in units of which `units_per_mm` make a mm. Cosmetic ones keep their
/// width under any transform.
QPen layer_pen(const report::LayerStyle& style, report::Ground ground, double units_per_mm,
               bool cosmetic = false);

/// The layer's hatch as a seamless tile of device pixels, finely drawn; Qt::NoBrush without a
/// hatch. The brush is scaled to `units_per_mm` of the coordinates it is used in.
QBrush hatch_brush(const report::LayerStyle& style, report::Ground ground, double pixels_per_mm,
                   double units_per_mm);

/// Outline and holes as one closed path, filled odd-even.
QPainterPath to_path(const geometry::Polygon& polygon);

}  // namespace drapewright::printing
