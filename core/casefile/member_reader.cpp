#include "core/casefile/member_reader.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <utility>

#include "core/base/say.h"
#include "core/casefile/spelling.h"

namespace drapewright::casefile {
namespace {

/// True when the text would be a number if it stood without quotation marks, or with a point in
/// place of its comma.
bool is_number_as_text(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  double value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  return !text.empty() && error == std::errc{} && end == text.data() + text.size();
}

[[noreturn]] void fail_as_number(const JsonValue& value) {
  if (value.kind() == JsonKind::text && is_number_as_text(value.text())) {
    std::string digits = value.text();
    std::replace(digits.begin(), digits.end(), ',', '.');
    value.fail(say("found a number as text, {1}", {in_quotes(value.text())}),
               say("a number without quotation marks: {1}", {digits}));
  }
  value.fail(say("found {1}", {value.in_words()}), say("a number"));
}

std::string quoted(std::string_view name) { return "\"" + std::string(name) + "\""; }

}  // namespace

MemberReader::MemberReader(JsonValue object, const char* what,
                           std::span<const std::string_view> known)
    : object_(object), what_(what), members_(object.members()) {
  if (object.kind() != JsonKind::object) {
    object.fail(say("found {1}", {object.in_words()}), say("{1}: an object in { }", {say(what_)}));
  }
  std::vector<std::string_view> missing;
  for (const auto name : known) {
    if (!optional(name)) missing.push_back(name);
  }
  for (const auto& member : members_) {
    if (std::find(known.begin(), known.end(), member.name) != known.end()) continue;
    const std::string_view meant = nearest_name(member.name, missing);
    if (!meant.empty()) {
      member.key.fail(
          say("unknown member {1} in {2}: did you mean {3}?",
              {in_quotes(member.name), say(what_), quoted(meant)}),
          say("{1}, or a name that begins with x_ for data of your own", {quoted(meant)}));
    }
    extra_.emplace(member.name, member.value.raw());
  }
}

JsonValue MemberReader::required(std::string_view name) const {
  const auto found = optional(name);
  if (!found) {
    object_.fail(say("{1} without {2}", {say(what_), quoted(name)}),
                 say("a member {1}", {quoted(name)}));
  }
  return *found;
}

std::optional<JsonValue> MemberReader::optional(std::string_view name) const {
  for (const auto& member : members_) {
    if (member.name == name) return member.value;
  }
  return std::nullopt;
}

void MemberReader::number(std::string_view name, double& into) const {
  if (const auto value = optional(name)) into = number_in(*value);
}

void MemberReader::number(std::string_view name, std::optional<double>& into) const {
  if (const auto value = optional(name)) into = number_in(*value);
}

void MemberReader::count(std::string_view name, std::optional<int>& into) const {
  if (const auto value = optional(name)) into = count_in(*value);
}

void MemberReader::text(std::string_view name, std::string& into) const {
  if (const auto value = optional(name)) into = text_in(*value);
}

void MemberReader::boolean(std::string_view name, bool& into) const {
  if (const auto value = optional(name)) into = boolean_in(*value);
}

std::vector<JsonValue> MemberReader::list(std::string_view name) const {
  const auto value = optional(name);
  return value ? list_in(*value, name) : std::vector<JsonValue>{};
}

double number_in(const JsonValue& value) {
  if (value.kind() != JsonKind::number) fail_as_number(value);
  return value.number();
}

int count_in(const JsonValue& value) {
  const double number = number_in(value);
  if (number < 0 || number > 1e9 || number != std::floor(number)) {
    value.fail(say("found {1}", {value.raw().substr(0, 40)}), say("a whole number, 0 or more"));
  }
  return static_cast<int>(number);
}

std::string text_in(const JsonValue& value) {
  if (value.kind() != JsonKind::text) {
    value.fail(say("found {1}", {value.in_words()}), say("a text in quotation marks"));
  }
  return value.text();
}

bool boolean_in(const JsonValue& value) {
  if (value.kind() != JsonKind::boolean) {
    value.fail(say("found {1}", {value.in_words()}), say("true or false"));
  }
  return value.boolean();
}

std::vector<JsonValue> list_in(const JsonValue& value, std::string_view of_what) {
  if (value.kind() != JsonKind::list) {
    value.fail(say("found {1}", {value.in_words()}), say("a list in [ ]: {1}", {say(of_what)}));
  }
  return value.items();
}

geometry::Point point_in(const JsonValue& value) {
  constexpr const char* two_numbers = term("two numbers [x, y] in cm");
  const auto items = list_in(value, two_numbers);
  if (items.size() != 2) {
    const bool comma = items.size() == 3 || items.size() == 4;
    value.fail(
        count_of(static_cast<int>(items.size()), "a point of {1} number", "a point of {1} numbers"),
        comma ? say("two numbers [x, y] in cm, each with a decimal point, not a comma")
              : say(two_numbers));
  }
  return {number_in(items[0]), number_in(items[1])};
}

geometry::Ring ring_in(const JsonValue& value) {
  geometry::Ring ring;
  const auto items = list_in(value, term("corner points [x, y] in cm"));
  ring.reserve(items.size());
  for (const auto& item : items) ring.push_back(point_in(item));
  if (ring.size() < 3) {
    value.fail(count_of(static_cast<int>(ring.size()), "an outline of {1} point",
                        "an outline of {1} points"),
               say("at least three corner points"));
  }
  if (ring.front() == ring.back()) ring.pop_back();
  return ring;
}

}  // namespace drapewright::casefile
