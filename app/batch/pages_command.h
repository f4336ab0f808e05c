#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `pages CASE`: the plan sheet and the other pages for the bedside and for teaching. Writes what
/// it finds into `status`.
void add_pages_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
