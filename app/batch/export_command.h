#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `export CASE`: measures, materials and cut layout in open formats. Writes what it finds into
/// `status`.
void add_export_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
