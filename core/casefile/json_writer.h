#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/extra_members.h"
#include "core/geometry/shape.h"

namespace drapewright::casefile {

/// Writes JSON from first to last. Indented by two spaces, lists of points several to a line; or
/// compact, all on one line. Numbers are written in the fewest digits that read back to the same
/// double, whatever the locale; what is not finite is written as null.
class JsonWriter {
 public:
  explicit JsonWriter(bool compact = false) : compact_(compact) {}

  void begin_object();
  void end_object();
  void begin_list();
  void end_list();
  void name(std::string_view name);

  void number(double value);
  void text(std::string_view value);  ///< bytes that are not UTF-8 become U+FFFD
  void boolean(bool value);
  void null();
  void raw(std::string_view json);  ///< one JSON value as it stands
  void point(geometry::Point value);
  void numbers(std::span<const double> values);  ///< a list on one line
  /// @param closed repeats the first point at the end
  void ring(const geometry::Ring& points, bool closed);

  void number(std::string_view member, double value) { name(member), number(value); }
  void text(std::string_view member, std::string_view value) { name(member), text(value); }
  void boolean(std::string_view member, bool value) { name(member), boolean(value); }
  void begin_list(std::string_view member) { name(member), begin_list(); }
  void begin_object(std::string_view member) { name(member), begin_object(); }
  void extra(const ExtraMembers& members);

  /// The text so far, and an end of line unless compact.
  std::string take();

 private:
  void before_value();
  void new_line();
  void end(char bracket);
  void append_list(std::span<const double> values);

  bool compact_;
  bool after_name_ = false;
  std::vector<bool> filled_;  ///< of each open object or list: something stands in it
  std::string out_;
};

}  // namespace drapewright::casefile
