#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace drapewright {

/// The number of a day of the calendar (days since 1970-01-01) from its date, YYYY-MM-DD; nothing
/// for what is no day of the calendar.
std::optional<int> day_number(std::string_view date);

/// YYYY-MM-DD of a day number.
std::string date_of_day(int day);

}  // namespace drapewright
