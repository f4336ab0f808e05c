#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// Adds `forecast` to the command line: what a caseload will use, the shelf over time, orders.
void add_forecast_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
