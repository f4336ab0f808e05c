#pragma once

#include <QPolygonF>

#include "core/geometry/shape.h"

class QPainter;

namespace drapewright::desktop {

class PlanView;

/// How the tools draw outlines and what is wrong with them.

QPolygonF on_view(const PlanView& view, const geometry::Ring& line);

/// A ring with a cross in it, in the ink of a stop: here a line crosses another.
void paint_crossing(QPainter& painter, const PlanView& view, geometry::Point at);
/// The same, and says so beside it.
void tell_crossing(QPainter& painter, const PlanView& view, geometry::Point at);

}  // namespace drapewright::desktop
