#pragma once

#include <functional>

#include "core/cutting/budget.h"
#include "core/cutting/random.h"
#include "core/cutting/scene.h"

namespace drapewright::cutting {

/// The shortest strip found for all pieces of the scene; `bound` is where nothing more is to gain.
/// @param better told of every shorter one: the arrangement and its length
void search_strip(Arrangement& arrangement, double width_cm, double bound, Budget& budget,
                  Random& random, const std::function<void(const Arrangement&, double)>& better);

}  // namespace drapewright::cutting
