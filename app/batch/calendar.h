#pragma once

#include <string>

namespace drapewright::batch {

/// The day by the clock and time zone of this machine, YYYY-MM-DD. Core reads no clock: it is told.
std::string todays_date();

/// What is wrong with a date given as YYYY-MM-DD; empty for a day that the calendar has, and for an
/// empty text.
std::string fault_of_date(const std::string& text);

}  // namespace drapewright::batch
