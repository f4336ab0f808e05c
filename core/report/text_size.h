#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/geometry/measures.h"
#include "core/report/drawing.h"

namespace drapewright::report {

/// The room that a line of UTF-8 text takes in a sans serif face, in mm: an estimate on the wide
/// side (advance widths of DejaVu Sans, which is wider than most), since core knows no fonts.
double text_width_mm(std::string_view text, double size_mm, bool bold = false);

/// What lies above and below the baseline, as a part of the text's size.
inline constexpr double text_ascent = 0.8;
inline constexpr double text_descent = 0.25;

/// At most `most_bytes` of the text and an ellipsis, cut between characters; all of it if it is no
/// longer.
std::string shortened(const std::string& text, std::size_t most_bytes);

/// As much of the text as the width holds, with an ellipsis where it is cut.
std::string fitted(const std::string& text, double width_mm, double size_mm, bool bold = false);

/// The text in lines that the width holds, broken at blanks (not at no-break ones, U+00A0) and
/// where it has an end of line; a single word that is wider is broken anywhere.
std::vector<std::string> wrapped(const std::string& text, double width_mm, double size_mm,
                                 bool bold = false);

/// The box that a label takes, unturned, in mm (low is the upper left corner: y points down).
geometry::Box label_box(const Label& label);

}  // namespace drapewright::report
