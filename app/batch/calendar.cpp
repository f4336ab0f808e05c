#include "app/batch/calendar.h"

#include <array>
#include <chrono>
#include <ctime>
#include <regex>

#include "core/base/say.h"

namespace drapewright::batch {

std::string todays_date() {
  const std::time_t now = std::time(nullptr);
  std::tm day{};
  ::localtime_r(&now, &day);
  std::array<char, 16> text{};
  return std::string(text.data(), std::strftime(text.data(), text.size(), "%Y-%m-%d", &day));
}

std::string fault_of_date(const std::string& text) {
  if (text.empty()) return {};
  static const std::regex form("([0-9]{4})-([0-9]{2})-([0-9]{2})");
  std::smatch parts;
  if (std::regex_match(text, parts, form)) {
    const std::chrono::year_month_day date(
        std::chrono::year(std::stoi(parts[1])),
        std::chrono::month(static_cast<unsigned>(std::stoi(parts[2]))),
        std::chrono::day(static_cast<unsigned>(std::stoi(parts[3]))));
    if (date.ok()) return {};
  }
  return say("'{1}' is not a day of the calendar, YYYY-MM-DD", {text});
}

}  // namespace drapewright::batch
