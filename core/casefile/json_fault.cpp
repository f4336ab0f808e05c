#include "core/casefile/json_fault.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <cstring>

#include "core/base/say.h"
#include "core/casefile/json_document.h"

namespace drapewright::casefile {
namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return std::isalpha(static_cast<unsigned char>(c)) != 0; }

bool is_in_word(char c) {
  return is_letter(c) || is_digit(c) || c == '_' || c == '+' || c == '-' || c == '.';
}

std::size_t skip_blanks(std::string_view text, std::size_t at) {
  return std::min(text.find_first_not_of(" \t\r\n", at), text.size());
}

/// The run of characters around `at` that would make one word or number.
std::string_view word_at(std::string_view text, std::size_t at) {
  if (!is_in_word(text[at])) return {};
  std::size_t begin = at;
  while (begin > 0 && is_in_word(text[begin - 1])) --begin;
  std::size_t end = at;
  while (end < text.size() && is_in_word(text[end])) ++end;
  return text.substr(begin, end - begin);
}

std::string where(std::string_view text, std::size_t offset) {
  const TextPosition position = position_of(text, offset);
  return say("line {1}, column {2}", {position.line, position.column});
}

bool is_json_number(std::string_view word) {
  return !word.empty() && end_of_number(word, 0) == word.size();
}

/// What ails the quoted text at `at`; nothing when it is sound.
JsonFault explain_text(std::string_view text, std::size_t at) {
  for (std::size_t i = at + 1; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    if (c == '"') {
      const std::size_t bad = find_bad_utf8(text.substr(at, i - at));
      if (bad == std::string_view::npos) return {};
      return {say("a text holds bytes that are not UTF-8"), say("text in UTF-8"), at + bad};
    }
    if (c == '\n' || c == '\r') {
      return {say("a text is not closed before the line ends"), say("a closing quotation mark"),
              at};
    }
    if (c < 0x20) return {say("a text holds a control character"), say("an escape such as \\t"), i};
    if (c != '\\') continue;
    const char escape = i + 1 < text.size() ? text[i + 1] : '"';
    if (std::strchr("\"\\/bfnrtu", escape) == nullptr) {
      return {say("{1} is not an escape of JSON",
                  {"\\" + std::string(is_letter(escape) ? 1 : 0, escape)}),
              say("\\\\ for a backslash"), i};
    }
    if (escape == 'u') {
      const std::string_view hex = text.substr(std::min(i + 2, text.size()), 4);
      const bool sound = hex.size() == 4 && std::all_of(hex.begin(), hex.end(), [](char h) {
                           return std::isxdigit(static_cast<unsigned char>(h)) != 0;
                         });
      if (!sound) return {say("\\u without four hexadecimal digits"), say("\\u00e9, say"), i};
      if (hex[0] == 'd' || hex[0] == 'D') {
        if (hex[1] >= '8' && !(i + 7 < text.size() && text[i + 6] == '\\')) {
          return {say("half a surrogate pair"), say("both halves, or the character itself"), i};
        }
      }
    }
    ++i;
  }
  return {say("a text is cut off"), say("a closing quotation mark"), at};
}

/// Words that other programs write where JSON has none.
JsonFault explain_word(std::string_view word, std::size_t at) {
  std::string lower;
  for (const char c : word) {
    if (c != '-' && c != '+') {
      lower += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
  }
  const std::string found(word.substr(0, 40));
  if (lower == "nan" || lower == "inf" || lower == "infinity") {
    return {say("{1} is not a number that can be planned with", {found}),
            say("a finite number, or the member left out"), at};
  }
  if (lower == "true" || lower == "false" || lower == "null") {
    return {say("found {1}", {found}), say("{1} in small letters", {lower}), at};
  }
  if (lower == "none" || lower == "undefined") {
    return {say("found {1}", {found}), say("a value, or the member left out"), at};
  }
  return {say("found {1} without quotation marks", {in_quotes(word)}), say("a JSON value"), at};
}

JsonFault explain_end(const BrokenJson& broken) {
  if (!broken.in_object && !broken.in_list) {
    return {say("the file holds nothing but blanks"), say("a case in JSON"), 0};
  }
  const std::string opened = where(broken.text, broken.opened_at);
  return broken.in_object
             ? JsonFault{say("the file ends in the middle of the object that begins at {1}",
                             {opened}),
                         say("a complete file that ends with }"), broken.text.size()}
             : JsonFault{
                   say("the file ends in the middle of the list that begins at {1}", {opened}),
                   say("a complete file that ends with }"), broken.text.size()};
}

/// What may come next at the place of the fault.
std::string what_may_follow(const BrokenJson& broken, bool after_separator) {
  if (broken.name_read)
    return after_separator ? say("a value") : say("a colon after the member's name");
  if (after_separator)
    return broken.in_object ? say("a member's name in quotation marks") : say("a value");
  const bool just_opened =
      broken.after > 0 && broken.after == broken.opened_at + 1 && !broken.value_read;
  if (broken.in_object)
    return just_opened ? say("a member's name in quotation marks") : say("a comma or }");
  if (broken.in_list) return just_opened ? say("a value or ]") : say("a comma or ]");
  return say("an object that begins with {");
}

JsonFault explain_bracket(const BrokenJson& broken, std::size_t at, char separator) {
  const char bracket = broken.text[at];
  if (separator == ',') {
    return {say("a comma before the closing {1}", {std::string(1, bracket)}),
            say("no comma after the last one"), at};
  }
  if (broken.name_read) return {say("a member without a value"), say("a value after its name"), at};
  const std::vector<Insert> inserts{std::string(1, bracket), where(broken.text, broken.opened_at)};
  return {broken.in_object ? say("found {1} where an object is open that begins at {2}", inserts)
                           : say("found {1} where a list is open that begins at {2}", inserts),
          broken.in_object ? "}" : "]", at};
}

JsonFault explain_number(const BrokenJson& broken, std::size_t at, char separator) {
  const std::string_view word = word_at(broken.text, at);
  const std::string found(word.substr(0, 40));
  if (!is_json_number(word)) {
    return {say("{1} is not a number as JSON writes it", {found}),
            say("digits with a decimal point, such as 0.5 or -12"), at};
  }
  if (separator == ',' && broken.in_object) {
    return {say("found the number {1} where a member's name belongs: a decimal comma?", {found}),
            say("numbers with a decimal point, such as 5.2"), at};
  }
  const bool value_fits =
      separator != 0 || (broken.in_list && broken.after == broken.opened_at + 1);
  if (value_fits) {
    return {say("the number {1} is too large", {found}), say("a number within its bounds"), at};
  }
  return {say("found the number {1}", {found}), what_may_follow(broken, false), at};
}

JsonFault explain_other(const BrokenJson& broken, std::size_t at, bool after_separator) {
  const char c = broken.text[at];
  if (c == '\'') return {say("found a single quotation mark"), say("double quotation marks"), at};
  if (c == '#' || broken.text.substr(at, 2) == "//" || broken.text.substr(at, 2) == "/*")
    return {say("found a comment"), say("JSON without comments"), at};
  if (static_cast<unsigned char>(c) >= 0x80) {
    const bool sound = find_bad_utf8(broken.text.substr(at, 4)) != 0;
    return {sound ? say("found a character that has no place outside a text")
                  : say("found bytes that are not UTF-8"),
            what_may_follow(broken, after_separator), at};
  }
  const bool printable = c > 0x20 && c < 0x7f;
  return {printable ? say("found {1}", {std::string(1, c)}) : say("found a control character"),
          what_may_follow(broken, after_separator), at};
}

}  // namespace

JsonFault explain(const BrokenJson& broken) {
  std::size_t at = skip_blanks(broken.text, broken.after);
  if (broken.value_read) {
    return {say("something follows the end of the case"), say("nothing after the last }"), at};
  }
  char separator = 0;
  if (at < broken.text.size() && broken.text[at] == (broken.name_read ? ':' : ',') &&
      (broken.name_read || broken.after != broken.opened_at + 1)) {
    separator = broken.text[at];
    at = skip_blanks(broken.text, at + 1);
  }
  if (at == broken.text.size()) return explain_end(broken);
  const char c = broken.text[at];
  const bool outermost = !broken.in_object && !broken.in_list;
  if (outermost && c != '"' && !is_digit(c) && c != '-') {
    return {say("this is not JSON: it begins with {1}", {in_quotes(broken.text.substr(at, 12))}),
            say("an object that begins with {"), at};
  }
  if (c == '"') {
    JsonFault fault = explain_text(broken.text, at);
    if (!fault.problem.empty()) return fault;
    return {say("found a text"), what_may_follow(broken, separator != 0), at};
  }
  if (c == '}' || c == ']') return explain_bracket(broken, at, separator);
  const std::string_view word = word_at(broken.text, at);
  if (!word.empty()) at = static_cast<std::size_t>(word.data() - broken.text.data());
  if (!word.empty() &&
      (is_letter(word[0]) || (word.size() > 1 && is_letter(word[1]) && !is_digit(word[0])))) {
    const bool literal = word == "true" || word == "false" || word == "null";
    if (literal) return {say("found {1}", {word}), what_may_follow(broken, separator != 0), at};
    return explain_word(word, at);
  }
  if (!word.empty()) return explain_number(broken, at, separator);
  return explain_other(broken, at, separator != 0);
}

std::size_t end_of_number(std::string_view text, std::size_t begin) {
  std::size_t i = begin;
  const auto is = [&](const char* any) {
    return i < text.size() && text[i] != 0 && std::strchr(any, text[i]) != nullptr;
  };
  const auto digits = [&] {
    const std::size_t first = i;
    while (i < text.size() && is_digit(text[i])) ++i;
    return i > first;
  };
  if (is("-")) ++i;
  if (is("0")) {
    ++i;
  } else if (!digits()) {
    return begin;
  }
  std::size_t end = i;
  if (is(".")) {
    ++i;
    if (!digits()) return end;
    end = i;
  }
  if (is("eE")) {
    ++i;
    if (is("+-")) ++i;
    if (digits()) end = i;
  }
  return end;
}

std::size_t find_bad_utf8(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const auto continues = [&](std::size_t i, unsigned low = 0x80, unsigned high = 0xBF) {
    return i < text.size() && byte(i) >= low && byte(i) <= high;
  };
  for (std::size_t i = 0; i < text.size();) {
    const unsigned lead = byte(i);
    // RFC 3629, section 4: overlong forms, surrogates and what lies beyond U+10FFFF are left out.
    const unsigned low = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    const unsigned high = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    if (lead < 0x80) {
      i += 1;
    } else if (lead >= 0xC2 && lead <= 0xDF && continues(i + 1)) {
      i += 2;
    } else if (lead >= 0xE0 && lead <= 0xEF && continues(i + 1, low, high) && continues(i + 2)) {
      i += 3;
    } else if (lead >= 0xF0 && lead <= 0xF4 && continues(i + 1, low, high) && continues(i + 2) &&
               continues(i + 3)) {
      i += 4;
    } else {
      return i;
    }
  }
  return std::string_view::npos;
}

}  // namespace drapewright::casefile
