#pragma once

#include <optional>
#include <string>

#include "core/cutting/layout.h"

namespace drapewright::support {

/// What GEOS finds wrong with a layout, in words, or nothing: every piece once, congruent with the
/// job's own and not turned over, inside its sheet, and clear of the others by the gap. The second
/// judge beside cutting::find_fault, with which it shares no code.
/// @throws std::runtime_error where GEOS fails
std::optional<std::string> fault_by_geos(const cutting::Job& job, const cutting::Layout& layout);

}  // namespace drapewright::support
