#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/base/say.h"
#include "core/report/drawing.h"
#include "core/report/plan_drawing.h"

namespace drapewright::report {

enum class Paper { a4, letter };

/// Upright, in mm. A4: ISO 216; letter: 8.5 x 11 inch.
DrawingSize size_of(Paper paper);
/// "A4", "letter".
std::string_view name_of(Paper paper);

/// Nothing on a page is set smaller than 8 point.
inline constexpr double least_text_mm = 8 * 25.4 / 72;
/// Ordinary text: 8.8 point, so that what a drawing sets at nine tenths of it is not too small.
inline constexpr double page_text_mm = 3.15;
/// Kept free all round: more than any common printer leaves blank.
inline constexpr double page_margin_mm = 12;

/// Pages that belong together, each a drawing of the paper's size. Made without a look at clock or
/// locale: equal input gives equal pages.
struct Document {
  std::string title;
  std::string language = say("en");  ///< of its words (BCP 47): translated with them
  std::string date;                  ///< YYYY-MM-DD, of the day it was made on; empty: not said
  std::vector<Drawing> pages;
};

/// More pages behind those that there are; the first that come give title, language and date.
void append(Document& all, Document more);

/// What stands on every page that belongs to a case.
struct PageOptions {
  Paper paper = Paper::a4;
  std::string today;  ///< YYYY-MM-DD; empty: no date of printing
};

}  // namespace drapewright::report
