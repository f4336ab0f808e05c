#pragma once

#include <string>

#include "core/dressing/plan.h"

namespace drapewright::report {

/// The plan in words for a terminal or a note: findings first, then measures with their spread,
/// filler by layer with the count of pieces, film with its border by the clock, port, materials
/// with the arithmetic of every line. UTF-8, lines of at most 80 characters (but for words that
/// are longer), lengths rounded to 0.1 cm, ends with a newline.
std::string text_summary(const dressing::Plan& plan);

}  // namespace drapewright::report
