#include "core/casefile/what_if.h"

#include <algorithm>
#include <charconv>

#include "core/base/error.h"
#include "core/base/say.h"
#include "core/casefile/settings.h"
#include "core/practice/limits.h"

namespace drapewright::casefile {
namespace {

constexpr std::string_view filler_items = "filler_items";

template <typename Table>
auto member_named(const Table& table, std::string_view name) {
  const auto row = std::ranges::find(table, name, [](const auto& r) { return r.first; });
  return row == table.end() ? nullptr : row->second;
}

double number_in(const std::string& text, const practice::Limit& limit) {
  double value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = read.ec == std::errc{} && read.ptr == text.data() + text.size();
  if (whole && practice::within_bounds(limit, value)) return value;
  throw InputError(say("{1} cannot be '{2}'", {limit.id, text}), practice::bounds_in_words(limit));
}

}  // namespace

WhatIf::WhatIf(const std::string& words) : words_(words) {
  for (std::size_t begin = 0; begin <= words.size();) {
    const std::size_t end = std::min(words.find(',', begin), words.size());
    changes_.push_back(change_in(words.substr(begin, end - begin)));
    begin = end + 1;
  }
}

WhatIf::Change WhatIf::change_in(const std::string& text) const {
  const std::size_t sign = text.find('=');
  Change change{.name = text.substr(0, sign)};
  if (sign == std::string::npos || sign + 1 == text.size()) {
    throw InputError(say("'{1}' says nothing to change", {text}), say("NAME=VALUE"));
  }
  change.text = text.substr(sign + 1);
  if (change.name == filler_items) return change;
  const bool known = member_named(settings, change.name) != nullptr ||
                     member_named(forecast::numbers, change.name) != nullptr;
  if (!known) {
    throw InputError(
        say("'{1}' is no setting", {change.name}),
        say("a number of the case's dressing or of the forecast, such as change_every_h, "
            "canister_ml or service_level_share; or filler_items"));
  }
  change.value = number_in(change.text, practice::limit(change.name));
  return change;
}

bool WhatIf::changes_cases() const {
  return std::ranges::any_of(changes_, [](const Change& change) {
    return change.name == filler_items || member_named(settings, change.name) != nullptr;
  });
}

void WhatIf::apply(wound::Case& value) const {
  for (const Change& change : changes_) {
    if (change.name == filler_items) value.dressing.filler_items = {change.text};
    const auto member = member_named(settings, change.name);
    if (member != nullptr) value.dressing.*member = change.value;
  }
}

void WhatIf::apply(forecast::Settings& values) const {
  for (const Change& change : changes_) {
    const auto member = member_named(forecast::numbers, change.name);
    if (member != nullptr) values.*member = change.value;
  }
}

}  // namespace drapewright::casefile
