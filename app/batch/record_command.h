#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `record CASE`: lists the dressings of a case with what is due, and writes a change down.
void add_record_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
