#include "core/base/calendar.h"

#include <charconv>
#include <chrono>

namespace drapewright {
namespace {

std::optional<int> number_in(std::string_view text) {
  int number = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
  if (read.ec != std::errc{} || read.ptr != text.data() + text.size() || number < 0) return {};
  return number;
}

std::string padded(int number, std::size_t digits) {
  std::string text = std::to_string(number);
  return text.size() < digits ? std::string(digits - text.size(), '0') + text : text;
}

}  // namespace

std::optional<int> day_number(std::string_view date) {
  if (date.size() != 10 || date[4] != '-' || date[7] != '-') return {};
  const auto year = number_in(date.substr(0, 4));
  const auto month = number_in(date.substr(5, 2));
  const auto day = number_in(date.substr(8, 2));
  if (!year || !month || !day) return {};
  const std::chrono::year_month_day value{std::chrono::year{*year},
                                          std::chrono::month{static_cast<unsigned>(*month)},
                                          std::chrono::day{static_cast<unsigned>(*day)}};
  if (!value.ok()) return {};
  return static_cast<int>(std::chrono::sys_days{value}.time_since_epoch().count());
}

std::string date_of_day(int day) {
  const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day}}};
  return padded(static_cast<int>(date.year()), 4) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(date.month())), 2) + "-" +
         padded(static_cast<int>(static_cast<unsigned>(date.day())), 2);
}

}  // namespace drapewright
