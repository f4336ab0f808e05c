#include "app/desktop/fields/number_range.h"

#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/base/say.h"

namespace drapewright::desktop {
namespace {

QString shown(double value) { return QString::fromStdString(format_short(value, 3)); }

QString without_unit(const NumberRange& range, const QString& text) {
  QString number = text.trimmed();
  if (range.optional && number == range.when_empty) return {};
  // Twice, when it was typed in front of the one that the field shows.
  while (!range.unit.isEmpty() && number.endsWith(range.unit)) {
    number.chop(range.unit.size());
    number = number.trimmed();
  }
  return number;
}

bool is_within(const NumberRange& range, double value) {
  const bool too_low = range.minimum_excluded ? value <= range.minimum : value < range.minimum;
  const bool too_high = range.maximum_excluded ? value >= range.maximum : value > range.maximum;
  return !too_low && !too_high;
}

}  // namespace

NumberRange range_of(const practice::Limit& limit) {
  return {.minimum = limit.minimum,
          .maximum = limit.maximum,
          .minimum_excluded = limit.minimum_excluded,
          .maximum_excluded = limit.maximum_excluded,
          .unit = QString::fromStdString(say(limit.unit))};
}

NumberRange clock_range() {
  return {
      .minimum = 0, .maximum = 12, .minimum_excluded = true, .step = 1, .unit = spoken("o'clock")};
}

TypedNumber read_within(const NumberRange& range, const QString& text) {
  const QString number = without_unit(range, text);
  const TypedNumber typed = read_number(number);
  if (!typed.value || is_within(range, *typed.value)) return typed;
  const QString least = shown(range.minimum), most = shown(range.maximum);
  return {{},
          spoken("“{1}” is not within {2} to {3} {4}",
                 {number, range.minimum_excluded ? spoken("above {1}", {least}) : least,
                  range.maximum_excluded ? spoken("below {1}", {most}) : most, range.unit})
              .trimmed()};
}

}  // namespace drapewright::desktop
