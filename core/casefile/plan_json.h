#pragma once

#include <string>

#include "core/dressing/plan.h"

namespace drapewright::casefile {

/// The plan as JSON (docs/plan.schema.json). Numbers that are not known are null where the schema
/// allows it. @param compact one line, for JSON Lines; else indented, with a final newline
std::string plan_to_json(const dressing::Plan& plan, bool compact = false);

}  // namespace drapewright::casefile
