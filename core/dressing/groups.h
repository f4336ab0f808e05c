#pragma once

#include <vector>

#include "core/dressing/prepare.h"

namespace drapewright::dressing {

/// Indices of wounds whose films overlap when each reaches border_cm: nearer to each other than
/// twice that, or one inside another's island. Groups in the order of their first wound.
std::vector<std::vector<std::size_t>> film_groups(const std::vector<PreparedWound>& wounds,
                                                  double border_cm);

}  // namespace drapewright::dressing
