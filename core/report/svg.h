#pragma once

#include <string>

#include "core/report/drawing.h"

namespace drapewright::report {

/// The drawing as a standalone SVG 1.1 document (W3C recommendation of 2011) in mm: one group per
/// layer with id and class, a second one with its labels above all areas, hatches as patterns,
/// real text. Equal drawings give equal text, in every locale.
std::string to_svg(const Drawing& drawing, Ground ground = Ground::light);

}  // namespace drapewright::report
