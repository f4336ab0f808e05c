#pragma once

#include <QString>
#include <optional>

namespace drapewright::desktop {

/// A number as somebody typed it: its value, or why it was not taken.
struct TypedNumber {
  std::optional<double> value;
  QString doubt;  ///< empty when there is a value; for an empty text, both are empty
};

/// Reads "5.2" and "5,2" alike. What can be read two ways is refused, never guessed: "1,250" and
/// "1.250,5" (grouping or decimals?), "5 2", "52 mm". White space around it is fine.
TypedNumber read_number(const QString& text);

}  // namespace drapewright::desktop
