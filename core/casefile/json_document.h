#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/error.h"
#include "core/base/progress.h"

namespace drapewright::casefile {

enum class JsonKind : std::uint8_t { null, boolean, number, text, list, object };

class JsonDocument;

/// One value of a JsonDocument: a light handle, valid as long as its document.
class JsonValue {
 public:
  JsonValue(const JsonDocument& document, std::uint32_t index)
      : document_(&document), index_(index) {}

  JsonKind kind() const;
  /// The value as it stands in the file.
  std::string_view raw() const;
  /// @pre kind() is number. Never infinite: the reader refuses numbers too large for a double.
  double number() const;
  /// The decoded text. @pre kind() is text
  std::string text() const;
  /// @pre kind() is boolean
  bool boolean() const { return raw() == "true"; }

  struct Member;
  /// Those of a list, or nothing.
  std::vector<JsonValue> items() const;
  /// Those of an object in the order of the file, or nothing. Names are unique.
  std::vector<Member> members() const;
  std::optional<JsonValue> member(std::string_view name) const;

  std::string pointer() const;  ///< RFC 6901, from the root
  Place place() const;          ///< file, line and column of its first character, pointer
  /// What stands here, in words: `the text "5"`, `the number 3`, `a list`, `null`.
  std::string in_words() const;
  /// @throws InputError at this value's place
  [[noreturn]] void fail(const std::string& problem, const std::string& expected) const;

 private:
  const JsonDocument* document_;
  std::uint32_t index_;
};

struct JsonValue::Member {
  std::string name;
  JsonValue key;  ///< the name where it stands; its pointer is the member's
  JsonValue value;
};

/// A JSON text, read once and indexed: where every value begins and ends, and what holds it.
/// Values are decoded when asked for. Reading uses no recursion and refuses nesting deeper than
/// `deepest`, so that no file can exhaust the stack.
class JsonDocument {
 public:
  static constexpr int deepest = 64;

  /// @param text  UTF-8, a leading byte order mark is skipped; must outlive the document
  /// @param file  names the text in errors
  /// @throws InputError for what is not JSON (RFC 8259) or names a member twice
  /// @throws Cancelled when `progress` was told to stop
  JsonDocument(std::string_view text, std::string file, const Progress& progress = {});

  JsonValue root() const { return {*this, 0}; }
  /// The value that an RFC 6901 pointer names, or the nearest one on the way that exists.
  JsonValue nearest(std::string_view pointer) const;

 private:
  friend class JsonValue;
  friend class JsonIndexer;
  /// Entries stand in the order of the file: a list's items, or an object's name and value in
  /// turn, follow it at once.
  struct Entry {
    JsonKind kind;
    bool is_name;
    std::uint32_t begin;   ///< offset of the first byte
    std::uint32_t end;     ///< one past the last
    std::uint32_t next;    ///< one past the last entry inside this one
    std::uint32_t holder;  ///< the list or object that it stands in; the root's is itself
  };
  std::string name_at(std::uint32_t index) const;

  std::string_view text_;
  std::string file_;
  std::vector<Entry> entries_;
};

/// Line and column (in characters) of a byte offset.
TextPosition position_of(std::string_view text, std::size_t offset);

/// `text` in quotation marks on one line: control characters as escapes, cut short after 40
/// characters.
std::string in_quotes(std::string_view text);

/// A JSON pointer with one more step: `~` and `/` escaped as RFC 6901 asks, control characters as
/// in JSON, so that it stays on one line.
std::string pointer_step(const std::string& pointer, std::string_view name);

}  // namespace drapewright::casefile
