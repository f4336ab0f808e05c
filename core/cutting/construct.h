#pragma once

#include <vector>

#include "core/cutting/budget.h"
#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// Lays the pieces down one after another in the given order, each at the touching spot (of all
/// its catalogued orientations, on the first bed that takes it) that reaches least far along the
/// bed. Bays and holes of pieces that lie already are used. Pieces that find no room keep bed -1.
/// @returns whether all found room
bool construct(Arrangement& arrangement, const std::vector<int>& order, Budget& budget);

}  // namespace drapewright::cutting
