#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `check CASE...`: reads and validates, plans nothing.
void add_check_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
