#include "core/report/plan_words.h"

#include <algorithm>
#include <cctype>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/geometry/clock.h"

namespace drapewright::report {

std::string glued(std::string text) {
  for (auto at = text.find(' '); at != std::string::npos; at = text.find(' ', at)) {
    text.replace(at, 1, glue);
  }
  return text;
}

std::string one_decimal(double value) { return format_number(value, 1); }

std::string in_words(const dressing::Figure& figure, const std::string& unit) {
  std::string out = one_decimal(figure.value);
  if (figure.spread > 0) out += " +/- " + one_decimal(figure.spread);
  return glued(out + " " + unit);
}

std::string in_words(geometry::Point point) {
  return glued(say("({1}, {2}) cm", {one_decimal(point.x), one_decimal(point.y)}));
}

std::string upper(std::string_view word) {
  std::string out(word);
  for (char& c : out) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  return out;
}

std::string joined(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i + 1 < words.size(); ++i) out += (i == 0 ? "" : ", ") + words[i];
  if (words.empty()) return out;
  return words.size() == 1 ? words.back() : say("{1} and {2}", {out, words.back()});
}

std::vector<std::string> parted(std::string_view titles) {
  std::vector<std::string> out;
  for (std::size_t end = titles.find('|'); end != titles.npos; end = titles.find('|')) {
    out.emplace_back(titles.substr(0, end));
    titles.remove_prefix(end + 1);
  }
  out.emplace_back(titles);
  return out;
}

std::string along_clock(double direction_deg, const dressing::Plan& plan) {
  const geometry::Point towards{std::cos(geometry::radians(direction_deg)),
                                std::sin(geometry::radians(direction_deg))};
  const int hour = geometry::clock_sector({}, towards, plan.head_direction_deg);
  const int other = hour > 6 ? hour - 6 : hour + 6;
  return say("along {1} to {2} o'clock", {std::max(hour, other), std::min(hour, other)});
}

std::string stops_in_words(const dressing::Plan& plan) {
  const auto stops =
      std::ranges::count(plan.findings, dressing::Severity::stop, &dressing::Finding::severity);
  if (stops == 0) return {};
  return count_of(
      static_cast<int>(stops),
      "The plan has {1} finding that says STOP: read it on the plan sheet before you begin.",
      "The plan has {1} findings that say STOP: read them on the plan sheet before you begin.");
}

std::string with_stops(const std::string& line, const dressing::Plan& plan) {
  const std::string stops = stops_in_words(plan);
  return stops.empty() ? line : line + "\n" + stops;
}

}  // namespace drapewright::report
