#include "core/base/error.h"

#include <utility>

#include "core/base/numbers.h"

namespace drapewright {
namespace {

std::string describe(const Place& place) {
  std::string out = place.file;
  if (place.text) {
    out += (out.empty() ? "line " : ":") + std::to_string(place.text->line);
    out += (place.file.empty() ? ", column " : ":") + std::to_string(place.text->column);
  }
  if (!place.pointer.empty()) out += (out.empty() ? "" : ": ") + ("at " + place.pointer);
  if (place.drawing) {
    out += (out.empty() ? "" : ": ") + ("near (" + format_number(place.drawing->x_cm, 2) + ", " +
                                        format_number(place.drawing->y_cm, 2) + ") cm");
  }
  return out;
}

std::string one_line(const std::string& problem, const std::string& expected, const Place& place) {
  std::string out = describe(place);
  if (!out.empty()) out += ": ";
  out += problem;
  if (!expected.empty()) out += "; expected " + expected;
  return out;
}

}  // namespace

InputError::InputError(std::string problem, std::string expected, Place place)
    : std::runtime_error(one_line(problem, expected, place)),
      problem_(std::move(problem)),
      expected_(std::move(expected)),
      place_(std::move(place)) {}

InputError InputError::within(const Place& outer) const {
  Place merged = place_;
  if (merged.file.empty()) merged.file = outer.file;
  if (!merged.text) merged.text = outer.text;
  if (merged.pointer.empty()) merged.pointer = outer.pointer;
  if (!merged.drawing) merged.drawing = outer.drawing;
  return InputError(problem_, expected_, merged);
}

}  // namespace drapewright
