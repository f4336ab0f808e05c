#pragma once

#include <QKeyEvent>
#include <optional>

#include "core/geometry/shape.h"

namespace drapewright::desktop {

/// How far an arrow key moves something on the drawing: 1 mm, with Shift 1 cm. Nothing for other
/// keys.
inline std::optional<geometry::Point> arrow_step_cm(const QKeyEvent& event) {
  const double step = event.modifiers() & Qt::ShiftModifier ? 1 : 0.1;
  switch (event.key()) {
    case Qt::Key_Left:
      return geometry::Point{-step, 0};
    case Qt::Key_Right:
      return geometry::Point{step, 0};
    case Qt::Key_Up:
      return geometry::Point{0, step};
    case Qt::Key_Down:
      return geometry::Point{0, -step};
    default:
      return std::nullopt;
  }
}

}  // namespace drapewright::desktop
