#pragma once

#include "core/report/paper.h"

class QPrinter;

namespace drapewright::printing {

/// Prints every page at life size: the paper's corner is the page's, nothing is fitted or centred,
/// each page upright or lying as it was made. The printer's resolution stays as it is set.
/// @return false when the printer took no job
bool print(const report::Document& document, QPrinter& printer);

}  // namespace drapewright::printing
