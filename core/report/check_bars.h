#pragma once

#include "core/report/page.h"

namespace drapewright::report {

inline constexpr double check_bar_mm = 100;
/// Bars outside of these say that the printer was told to fit the page, not that it is off.
inline constexpr double least_bar_mm = 95, longest_bar_mm = 105;

/// What the check bars of an earlier print measured, across and down. Pages are stretched by as
/// much, so that this printer prints them true.
struct PrinterCorrection {
  double bar_across_mm = check_bar_mm;
  double bar_down_mm = check_bar_mm;

  double width_on_page(double mm) const { return mm * check_bar_mm / bar_across_mm; }
  double height_on_page(double mm) const { return mm * check_bar_mm / bar_down_mm; }
};

/// @throws std::invalid_argument for bars outside their bounds
void check(const PrinterCorrection& correction);

/// Two bars at right angles along the right and the lower edge of a room, and what to do if they
/// measure otherwise. @returns the room that is left
geometry::Box draw_check_bars(Page& page, geometry::Box room, const PrinterCorrection& correction);

}  // namespace drapewright::report
