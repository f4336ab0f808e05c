#pragma once

#include <algorithm>

#include "core/report/drawing.h"

namespace drapewright::report {

/// The triangle at the end of a stroke that arrives at `tip` from `from`, in mm.
inline geometry::Ring arrow_head(geometry::Point tip, geometry::Point from) {
  const double length = geometry::distance(tip, from);
  if (length == 0) return {tip, tip, tip};
  const geometry::Point back = (1 / length) * (from - tip);
  const geometry::Point foot = tip + std::min(arrow_length_mm, 0.45 * length) * back;
  const geometry::Point side = arrow_half_width_mm * geometry::Point{-back.y, back.x};
  return {tip, foot + side, foot - side};
}

}  // namespace drapewright::report
