#pragma once

#include "core/dressing/section.h"
#include "core/report/sketch.h"

namespace drapewright::report {

/// What there is to draw of a section: x along its line, y up, the skin at 0. What lies on the skin
/// (film, bridge, port) is given a thickness that can be seen; it has none of its own here.
Sketch sketch_section(const dressing::Section& section, double border_cm);

/// What must be known to read it, a sentence each.
std::vector<std::string> section_notes(const dressing::Section& section);

}  // namespace drapewright::report
