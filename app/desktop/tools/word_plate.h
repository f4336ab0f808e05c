#pragma once

#include <QRectF>
#include <QStringList>

#include "core/dressing/finding.h"

class QPainter;

namespace drapewright::desktop {

class PlanView;

/// Writes lines on a plate beside a place in the drawing, with the mark and the ink of their
/// weight: to the right of `beside` where there is room, else to its left, above or below.
/// @param beside in pixels; kept free where the view is large enough
void paint_words(QPainter& painter, const PlanView& view, const QStringList& lines,
                 dressing::Severity severity, const QRectF& beside);

}  // namespace drapewright::desktop
