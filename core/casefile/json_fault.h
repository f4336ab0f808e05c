#pragma once

#include <string>
#include <string_view>

namespace drapewright::casefile {

/// What a JSON text's reader knew when it met something that it could not read.
struct BrokenJson {
  std::string_view text;
  std::size_t after = 0;   ///< end of the last part that was read
  bool in_object = false;  ///< what is open there; neither: the outermost level
  bool in_list = false;
  bool value_read = false;    ///< outermost level: the value is complete, something follows it
  bool name_read = false;     ///< a member's name was the last part
  std::size_t opened_at = 0;  ///< where the object or list that is open begins
};

/// The fault in words, and where it lies.
struct JsonFault {
  std::string problem;
  std::string expected;
  std::size_t offset = 0;
};

/// Looks at the text after the last readable part and says what is wrong with it: a text cut off,
/// NaN, a decimal comma, a missing or surplus comma, single quotation marks, a comment, a bad
/// escape, bytes that are not UTF-8, ...
JsonFault explain(const BrokenJson& broken);

/// One past the end of the number that begins at `begin`, as RFC 8259 spells numbers; `begin`
/// itself when none does.
std::size_t end_of_number(std::string_view text, std::size_t begin);

/// Offset of the first byte that does not belong to well-formed UTF-8 (RFC 3629), or npos.
std::size_t find_bad_utf8(std::string_view text);

}  // namespace drapewright::casefile
