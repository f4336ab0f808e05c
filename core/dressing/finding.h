#pragma once

#include <optional>
#include <string>

#include "core/geometry/shape.h"

namespace drapewright::dressing {

enum class Severity {
  stop,     ///< do not go on until it is resolved
  warning,  ///< the clinician must weigh it
  note,     ///< worth knowing
};

/// Something that the plan's reader must know, with where it comes from and where it lies.
struct Finding {
  Severity severity = Severity::note;
  std::string code;    ///< stable, lower case with dashes: "border-short"
  std::string text;    ///< one or two plain sentences with the figures
  std::string source;  ///< practice::describe of what it rests on
  std::string wound;   ///< id, or empty for the whole case
  std::optional<geometry::Point> where_cm;
  friend bool operator==(const Finding&, const Finding&) = default;
};

/// "stop", "warning", "note": said where people read it.
std::string_view name_of(Severity severity);

}  // namespace drapewright::dressing
