#pragma once

#include <concepts>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace drapewright {

/// The language that people read. Core says everything in English and asks here for the same in
/// another language; it never reads a locale itself.
struct Language {
  /// The translation of a whole text with the places {1}, {2} ... kept. For a text with a count the
  /// English is its singular, and the answer is the form that the count takes. Empty: none known.
  std::function<std::string(std::string_view english, std::optional<int> count)> translate;
  char decimal_mark = '.';
};

/// Once, before anything is said and before any other thread starts. Without it: English.
void set_language(Language language);
const Language& language();

/// What stands at a numbered place of a text.
class Insert {
 public:
  Insert(std::string text) : text_(std::move(text)) {}
  Insert(std::string_view text) : text_(text) {}
  Insert(const char* text) : text_(text) {}
  template <std::integral Number>
  Insert(Number number) : text_(std::to_string(number)) {}

  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

/// `english` in the reader's language, with the inserts at its places {1} to {9}. Whole sentences:
/// halves that are glued together cannot be translated.
/// @throws std::logic_error for a place without an insert
std::string say(std::string_view english, const std::vector<Insert>& inserts = {});

/// "1 piece", "3 pieces": a count with its noun, in the form that the language takes for it. The
/// number stands before the noun, or at the place {1} where the text has one; `more` are the
/// inserts from {2} on.
std::string count_of(int count, std::string_view one, std::string_view many,
                     const std::vector<Insert>& more = {});

/// Marks a text of a table that is said later, for those who collect the texts.
constexpr const char* term(const char* english) { return english; }

}  // namespace drapewright
