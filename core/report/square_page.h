#pragma once

#include "core/report/check_bars.h"
#include "core/report/paper.h"

namespace drapewright::report {

/// Sides of the squares, in mm: for a wound on a toe, on a heel, on a back.
inline constexpr double square_sides_mm[] = {100, 50, 20};

/// A page with plain squares to lay beside a wound before it is photographed, and check bars. The
/// middle of a square's line is its edge.
/// @throws std::invalid_argument for bars outside their bounds
Document square_page(const PageOptions& options = {}, const PrinterCorrection& printer = {});

}  // namespace drapewright::report
