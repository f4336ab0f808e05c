#include "core/casefile/text_cursor.h"

#include <cctype>
#include <charconv>
#include <cmath>

#include "core/base/say.h"
#include "core/casefile/json_document.h"

namespace drapewright::casefile {
namespace {

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

bool is_of_word(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '-' || c == ':' || c == '_';
}

}  // namespace

TextCursor TextCursor::part(std::size_t begin, std::size_t end) const {
  TextCursor out = *this;
  out.text_ = text_.substr(0, end);
  out.at_ = begin;
  return out;
}

void TextCursor::skip_blanks() {
  while (!at_end() && is_blank(text_[at_])) ++at_;
}

bool TextCursor::take(char wanted) {
  skip_blanks();
  if (at_end() || text_[at_] != wanted) return false;
  ++at_;
  return true;
}

void TextCursor::expect(char wanted) {
  if (!take(wanted)) fail(std::string("\"") + wanted + "\"");
}

void TextCursor::skip_past(std::string_view wanted, const char* problem) {
  const std::size_t found = text_.find(wanted, at_);
  if (found == std::string_view::npos) {
    fail(say(problem), say("{1} at its end", {in_quotes(wanted)}));
  }
  at_ = found + wanted.size();
}

std::string_view TextCursor::word() {
  const std::size_t begin = at_;
  while (!at_end() && is_of_word(text_[at_])) ++at_;
  return text_.substr(begin, at_ - begin);
}

double TextCursor::number() {
  skip_blanks();
  const bool plus = peek() == '+';
  const char* begin = text_.data() + at_ + (plus ? 1 : 0);
  const char* end = text_.data() + text_.size();
  const bool begins_well = begin < end && (std::isdigit(static_cast<unsigned char>(*begin)) != 0 ||
                                           *begin == '.' || (*begin == '-' && !plus));
  double value = 0;
  if (!begins_well) fail(say("a number"));
  const auto [after, error] = std::from_chars(begin, end, value);
  if (error == std::errc::result_out_of_range)
    fail(say("a number that is too large"), say("a length"));
  if (error != std::errc{} || !std::isfinite(value)) fail(say("a number"));
  at_ = static_cast<std::size_t>(after - text_.data());
  return value;
}

void TextCursor::fail(const std::string& expected) const {
  if (at_end()) fail(say("the text ends here"), expected);
  const std::string_view here = rest();
  fail(say("found {1}", {in_quotes(here.substr(0, here.find_first_of(" \t\r\n", 1)))}), expected);
}

void TextCursor::fail(const std::string& problem, const std::string& expected) const {
  throw InputError(problem, expected, {.file = file_, .text = position_of(text_, at_)});
}

}  // namespace drapewright::casefile
