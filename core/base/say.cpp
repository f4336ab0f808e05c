#include "core/base/say.h"

#include <cctype>
#include <stdexcept>
#include <utility>

namespace drapewright {
namespace {

Language& chosen() {
  static Language language;
  return language;
}

std::string translated(std::string_view english, std::optional<int> count,
                       std::string_view otherwise) {
  if (!chosen().translate || english.empty()) return std::string(otherwise);
  std::string found = chosen().translate(english, count);
  return found.empty() ? std::string(otherwise) : found;
}

bool place_at(std::string_view text, std::size_t at) {
  return at + 2 < text.size() && text[at] == '{' && text[at + 2] == '}' &&
         std::isdigit(static_cast<unsigned char>(text[at + 1]));
}

std::string filled(std::string_view text, const std::vector<Insert>& inserts) {
  std::string out;
  for (std::size_t at = 0; at < text.size(); ++at) {
    if (!place_at(text, at)) {
      out += text[at];
      continue;
    }
    const int number = text[at + 1] - '0';
    if (number < 1 || number > static_cast<int>(inserts.size())) {
      throw std::logic_error("no insert {" + std::to_string(number) + "} for: " + std::string(text));
    }
    out += inserts[static_cast<std::size_t>(number - 1)].text();
    at += 2;
  }
  return out;
}

}  // namespace

void set_language(Language language) { chosen() = std::move(language); }

const Language& language() { return chosen(); }

std::string say(std::string_view english, const std::vector<Insert>& inserts) {
  return filled(translated(english, std::nullopt, english), inserts);
}

std::string count_of(int count, std::string_view one, std::string_view many,
                     const std::vector<Insert>& more) {
  const std::string text = translated(one, count, count == 1 ? one : many);
  std::vector<Insert> inserts{Insert(count)};
  inserts.insert(inserts.end(), more.begin(), more.end());
  const bool has_place = text.find("{1}") != std::string::npos;
  return filled(has_place ? text : "{1} " + text, inserts);
}

}  // namespace drapewright
