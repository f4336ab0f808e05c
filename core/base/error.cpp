#include "core/base/error.h"

#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright {
namespace {

std::string describe(const Place& place) {
  std::string out = place.file;
  if (place.text && place.file.empty()) {
    out = say("line {1}, column {2}", {place.text->line, place.text->column});
  } else if (place.text) {
    out += ":" + std::to_string(place.text->line) + ":" + std::to_string(place.text->column);
  }
  if (!place.pointer.empty()) out += (out.empty() ? "" : ": ") + say("at {1}", {place.pointer});
  if (place.drawing) {
    out += (out.empty() ? "" : ": ") +
           say("near ({1}, {2}) cm",
               {format_number(place.drawing->x_cm, 2), format_number(place.drawing->y_cm, 2)});
  }
  return out;
}

std::string one_line(const std::string& problem, const std::string& expected, const Place& place) {
  std::string out = describe(place);
  if (!out.empty()) out += ": ";
  return out + (expected.empty() ? problem : say("{1}; expected {2}", {problem, expected}));
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
