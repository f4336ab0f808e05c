#pragma once

#include <string>
#include <vector>

#include "core/dressing/plan.h"

namespace drapewright::support {

/// Where the plan file or the text summary does not give the plan's own counts: pieces of filler in
/// all and in their parts, films, sheets, findings. A sentence each.
std::vector<std::string> broken_texts(const dressing::Plan& plan);

}  // namespace drapewright::support
