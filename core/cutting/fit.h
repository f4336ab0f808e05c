#pragma once

#include <optional>
#include <span>

#include "core/cutting/layout.h"

namespace drapewright::cutting {

/// The turn at which points keep within a sheet, alone, its edge's gap left free; of the turns
/// that the job allows, the one with the most room (or the first). Nothing: they fit at none.
/// @param margin_cm how much smaller than the sheet they have to be on every side
std::optional<double> turn_that_fits(std::span<const geometry::Point> points, const Job& job,
                                     const SheetKind& sheet, double margin_cm = 0);

/// What the job cuts from: its sheets of which there are any, or a strip of great length.
std::vector<SheetKind> sheets_at_hand(const Job& job);

}  // namespace drapewright::cutting
