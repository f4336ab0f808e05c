#pragma once

#include <QString>

#include "app/desktop/fields/read_number.h"
#include "core/practice/limits.h"

namespace drapewright::desktop {

/// What numbers may be typed in one place, and how they are shown there.
struct NumberRange {
  double minimum = 0;
  double maximum = 100;
  bool minimum_excluded = false;
  bool maximum_excluded = false;
  int decimals = 2;
  double step = 0.1;
  QString unit;
  bool optional = false;  ///< may be left empty
  QString when_empty;     ///< what an empty field says
};

/// The bounds and the unit of a row in the table of limits.
NumberRange range_of(const practice::Limit& limit);
/// An hour of the clock method, above 0 to 12.
NumberRange clock_range();

/// A text as a number of the range; its own unit may stand behind it. What lies outside is refused
/// with the bounds, never cut down to them. Of an empty text, value and doubt are both empty.
TypedNumber read_within(const NumberRange& range, const QString& text);

}  // namespace drapewright::desktop
