#pragma once

#include "core/casefile/json_writer.h"
#include "core/dressing/plan.h"

namespace drapewright::casefile {

/// The members `cut_layout`, `film_layout` and `sheet_comparison` of a plan.
void write_cut_layout(JsonWriter& out, const dressing::Plan& plan);

}  // namespace drapewright::casefile
