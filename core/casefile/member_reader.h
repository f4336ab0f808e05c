#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/extra_members.h"
#include "core/casefile/json_document.h"
#include "core/geometry/shape.h"

namespace drapewright::casefile {

/// Reads the members of one object of known names. Unknown members are kept as they stand, unless
/// one looks like a known name that is missing: that is refused as a slip of the pen, since a depth
/// that is silently left out could hurt.
class MemberReader {
 public:
  /// @param what   what the object is, in words (a term: "a wound")
  /// @param known  every name that the format knows here
  /// @throws InputError when it is not an object, or has a misspelt member
  MemberReader(JsonValue object, const char* what, std::span<const std::string_view> known);

  /// @throws InputError when it is missing
  JsonValue required(std::string_view name) const;
  std::optional<JsonValue> optional(std::string_view name) const;

  /// The member, or what stands there already when it is left out.
  void number(std::string_view name, double& into) const;
  void number(std::string_view name, std::optional<double>& into) const;
  void count(std::string_view name, std::optional<int>& into) const;
  void text(std::string_view name, std::string& into) const;
  void boolean(std::string_view name, bool& into) const;
  std::vector<JsonValue> list(std::string_view name) const;

  const ExtraMembers& extra() const { return extra_; }

 private:
  JsonValue object_;
  const char* what_;
  std::vector<JsonValue::Member> members_;
  ExtraMembers extra_;
};

/// The value as what is asked for. @throws InputError at its place when it is something else
double number_in(const JsonValue& value);
int count_in(const JsonValue& value);  ///< a whole number that is not negative
std::string text_in(const JsonValue& value);
bool boolean_in(const JsonValue& value);
/// @param of_what  what it lists: a term, or the member's name
std::vector<JsonValue> list_in(const JsonValue& value, std::string_view of_what);
geometry::Point point_in(const JsonValue& value);
/// Corner points; a closing point that repeats the first is left out.
geometry::Ring ring_in(const JsonValue& value);

}  // namespace drapewright::casefile
