#pragma once

#include <string>
#include <string_view>

#include "core/base/error.h"

namespace drapewright::casefile {

/// Reads a text from left to right, and knows where it is when something is wrong.
class TextCursor {
 public:
  TextCursor(std::string_view text, std::string file) : text_(text), file_(std::move(file)) {}

  /// The part between two offsets, with places in the whole text.
  TextCursor part(std::size_t begin, std::size_t end) const;

  bool at_end() const { return at_ >= text_.size(); }
  /// The character here; 0 at the end.
  char peek() const { return at_end() ? '\0' : text_[at_]; }
  std::size_t offset() const { return at_; }
  std::string_view rest() const { return text_.substr(at_); }
  void advance(std::size_t count = 1) { at_ += count; }
  void skip_blanks();
  /// Passes over blanks, and over `wanted` if it is next.
  bool take(char wanted);
  void expect(char wanted);
  /// Passes over the next `wanted`, which may be far away; `problem` is a term for when it is not.
  void skip_past(std::string_view wanted, const char* problem);
  /// Letters, digits, - : and _ in a row.
  std::string_view word();
  /// A finite number after blanks.
  double number();
  [[noreturn]] void fail(const std::string& expected) const;
  [[noreturn]] void fail(const std::string& problem, const std::string& expected) const;

 private:
  std::string_view text_;  ///< up to where this cursor may read
  std::string file_;
  std::size_t at_ = 0;
};

}  // namespace drapewright::casefile
