#pragma once

#include <optional>

#include "core/dressing/plan.h"
#include "core/report/drawing.h"

namespace drapewright::report {

struct CutDrawingOptions {
  /// The room there is, in mm. Nothing: A4 upright, or as long as the sheets need.
  std::optional<double> width_mm;
  std::optional<double> height_mm;
  double text_mm = 3;
  bool brief = false;  ///< for a window that says the rest beside it: no title, notes in one line
  std::optional<double> mm_per_cm;  ///< a scale of the caller's choice; 10 is a template, life size
};

/// The filler sheets of one application, each with its pieces by name, the seams of pieces that
/// were cut apart, and the off-cut: to scale, seen from the same side as the wound. At the largest
/// round scale, life size at most, at which they fit the room; where none does, at the smallest.
/// Says so where there is nothing to cut. Deterministic.
/// @throws std::invalid_argument for sizes that are not positive and finite
Drawing draw_cut(const dressing::Plan& plan, const CutDrawingOptions& options = {});

}  // namespace drapewright::report
