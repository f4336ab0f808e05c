#pragma once

#include <CLI/CLI.hpp>

#include "app/batch/faults.h"

namespace drapewright::batch {

/// `templates CASE`: cutting templates at life size. Writes what it finds into `status`.
void add_templates_command(CLI::App& app, ExitStatus& status);

}  // namespace drapewright::batch
