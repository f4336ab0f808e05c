#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `outline FILE`: outlines of other programs to a case, or a case's outlines to another format.
void add_outline_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
