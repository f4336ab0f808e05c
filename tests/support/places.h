#pragma once

#include <string>

/// Where the tests find what they read and may write. A file of its own holds the paths, so that
/// no other object file depends on where the project lies (compiler caches work across checkouts).
namespace drapewright::support {

std::string project_folder();  ///< the source tree: demo_cases, docs
std::string build_folder();    ///< of the preset that is being tested

}  // namespace drapewright::support
