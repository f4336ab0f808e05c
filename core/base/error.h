#pragma once

#include <optional>
#include <stdexcept>
#include <string>

namespace drapewright {

/// A position in a text file; both numbers start at 1, columns count characters (UTF-8 code
/// points).
struct TextPosition {
  int line = 1;
  int column = 1;
};

/// A point of the drawing, in cm, where a shape is at fault.
struct DrawingPosition {
  double x_cm = 0;
  double y_cm = 0;
};

/// Where a fault lies. Every part may be unknown; what is known is printed.
struct Place {
  std::string file;                        ///< as the user named it; "-" is standard input
  std::optional<TextPosition> text;        ///< where in that file
  std::string pointer;                     ///< JSON pointer (RFC 6901) of the member at fault
  std::optional<DrawingPosition> drawing;  ///< the point of a shape at fault
};

/// Bad input: what is wrong, what was expected instead, and where. `what()` is one line made of
/// all of it, fit for standard error and for a dialog.
class InputError : public std::runtime_error {
 public:
  /// @param problem   what was found, in words ("the outline crosses itself")
  /// @param expected  what would have been right ("a simple polygon"); may be empty
  InputError(std::string problem, std::string expected, Place place = {});

  const std::string& problem() const { return problem_; }
  const std::string& expected() const { return expected_; }
  const Place& place() const { return place_; }

  /// The same fault with the parts of `outer` filled in where this one does not know them. Rooms
  /// that know only a shape throw; the reader that knows the file adds file and position.
  InputError within(const Place& outer) const;

 private:
  std::string problem_;
  std::string expected_;
  Place place_;
};

/// A job that was told to stop. Its own outcome: neither a result nor a fault.
class Cancelled : public std::exception {
 public:
  const char* what() const noexcept override { return "cancelled"; }
};

}  // namespace drapewright
