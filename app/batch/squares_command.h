#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `squares`: a page of squares to photograph beside a wound.
void add_squares_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
