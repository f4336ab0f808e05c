#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/dressing/plan.h"

namespace drapewright::report {

/// A no-break blank: keeps what belongs together on one line.
inline constexpr std::string_view glue = "\xC2\xA0";

/// The text with no-break blanks.
std::string glued(std::string text);

std::string one_decimal(double value);

/// "31.4 +/- 2.6 cm2", not to be broken; the figure alone where nothing is known of its spread.
std::string in_words(const dressing::Figure& figure, const std::string& unit);

/// "(0.3, 3.6) cm", not to be broken.
std::string in_words(geometry::Point point);

/// "The plan has 1 finding that says STOP: ..."; empty where it has none. For pages that are used
/// without the plan sheet.
std::string stops_in_words(const dressing::Plan& plan);
/// The same as a line of its own below another.
std::string with_stops(const std::string& line, const dressing::Plan& plan);

/// "STOP".
std::string upper(std::string_view word);

/// "A, B and C".
std::string joined(const std::vector<std::string>& words);

/// The titles of a table, said as one text with "|" between them: the same word alone may have to
/// be another in another table.
std::vector<std::string> parted(std::string_view titles);

/// "along 3 to 9 o'clock": where a length lies as the clinician sees the wound.
std::string along_clock(double direction_deg, const dressing::Plan& plan);

}  // namespace drapewright::report
