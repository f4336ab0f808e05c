#pragma once

#include <string>

#include "core/report/drawing.h"

namespace drapewright::batch {

/// Write the drawing, wholly or not at all; "-" is standard output.
/// @throws InputError when the file cannot be written
void write_svg_file(const std::string& path, const report::Drawing& drawing);
/// @param dpi dots per inch
void write_png_file(const std::string& path, const report::Drawing& drawing, double dpi);

}  // namespace drapewright::batch
