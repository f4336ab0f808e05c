#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `layout JOB`: lays bare pieces out on sheets or on a strip.
void add_layout_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
