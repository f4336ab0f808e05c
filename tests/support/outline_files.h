#pragma once

#include <string>
#include <vector>

#include "core/wound/case.h"

namespace drapewright::support {

/// Every .json file under a folder, in order.
std::vector<std::string> json_files(const std::string& folder);

/// A case file, or a bare outline ({"id": ..., "outline": [[x, y], ...], "islands": [...]}, in cm)
/// with the standard settings and the depth and run-in given.
/// @throws InputError as casefile::read_case; std::exception for a broken outline
wound::Case read_case_or_outline(const std::string& path, double depth_cm = 0,
                                 double run_in_cm = 0);

}  // namespace drapewright::support
