#pragma once

#include <QPainter>

#include "core/report/drawing.h"

namespace drapewright::printing {

/// Draws a drawing in the same looks as its SVG. The painter's world coordinates must be mm
/// (scale it first); it is left as it was found.
void paint(QPainter& painter, const report::Drawing& drawing,
           report::Ground ground = report::Ground::light);

/// The same on a ground that is there already: paper.
void paint_on_paper(QPainter& painter, const report::Drawing& drawing);

/// The two passes of `paint`, for callers that draw between them.
void paint_shapes(QPainter& painter, const report::DrawnLayer& layer, report::Ground ground);
void paint_words(QPainter& painter, const report::DrawnLayer& layer, report::Ground ground);

}  // namespace drapewright::printing
