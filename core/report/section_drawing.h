#pragma once

#include "core/dressing/section.h"
#include "core/report/plan_drawing.h"

namespace drapewright::report {

struct SectionDrawingOptions {
  DrawingOptions drawing;
  /// At any scale that fills the room, life size at most; without legend and notes, which stand
  /// beside it.
  bool for_screen = false;
  bool explained = true;  ///< else the layers are explained beside it, by the plan's legend
};

/// A section to scale, the same both ways, with rulers along the line and down from the skin, its
/// legend and what must be known to read it. Deterministic.
/// @param title   of the drawing, "Leg 1, 2026-03-02"
/// @param border_cm  the border that was asked for
/// @param options as for the plan's drawing; at a scale of the caller's choice the drawing is as
///                large as it needs to be
/// @throws std::invalid_argument as draw_plan; also for a section without length
Drawing draw_section(const dressing::Section& section, const std::string& title, double border_cm,
                     const SectionDrawingOptions& options = {});

/// The section in words, for those who cannot see it.
std::string describe_section(const dressing::Section& section);

}  // namespace drapewright::report
