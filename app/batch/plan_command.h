#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `plan CASE...`: the plan of each case as text, JSON or JSON Lines, and its picture.
void add_plan_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
