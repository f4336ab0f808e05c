#pragma once

#include <optional>
#include <string>

#include "core/cutting/layout.h"

namespace drapewright::cutting {

/// What may be missing from a gap, and how deep touching pieces may appear to overlap, before a
/// layout is refused: what rounding to the integer grid can do to shapes that touch exactly.
inline constexpr double rounding_slack_cm = 2e-5;

/// Why a layout must not be shown, in words: a piece missing, twice or not the job's own shape, off
/// its sheet, nearer to another than the gap, over another or inside one (in a hole or a bay it
/// may lie). Everything is worked out on the original outlines, moved by the placement and rounded
/// to an integer grid of tolerance::grid_cm: in doubles, touching pieces were found to report
/// gross false overlaps. Nothing: the layout is sound.
std::optional<std::string> find_fault(const Job& job, const Layout& layout);

}  // namespace drapewright::cutting
