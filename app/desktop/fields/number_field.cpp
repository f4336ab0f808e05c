#include "app/desktop/fields/number_field.h"

#include <QEvent>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

#include "app/desktop/fields/text_field.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

/// Digits after the point that tell the value apart from its neighbours, at most 6.
int decimals_needed(double value) {
  for (int decimals = 0; decimals < 6; ++decimals) {
    const double scale = std::pow(10, decimals);
    if (std::abs(std::round(value * scale) / scale - value) < 1e-9) return decimals;
  }
  return 6;
}

QString shown(double value, int decimals) {
  return QString::fromStdString(format_short(value, decimals));
}

}  // namespace

NumberField::NumberField(const Range& range, QWidget* parent)
    : QDoubleSpinBox(parent), range_(range) {
  const double least_step = std::pow(10, -range.decimals);
  setLocale(QLocale::c());
  setDecimals(range.decimals);
  setSingleStep(range.step);
  // An empty field is the value one step below all that can be entered.
  const double lowest = range.minimum + (range.minimum_excluded ? least_step : 0);
  const double highest = range.maximum - (range.maximum_excluded ? least_step : 0);
  setRange(range.optional ? lowest - 1 : lowest, highest);
  if (!range.unit.isEmpty()) setSuffix(" " + range.unit);
  setFocusPolicy(Qt::StrongFocus);
  setAccelerated(true);
  setMinimumHeight(26);
  setAlignment(Qt::AlignRight | Qt::AlignVCenter);
  if (range.optional) {
    setSpecialValueText(range.when_empty);
    setValue(minimum());
  }
  before_typing_ = value();
  connect(this, &QDoubleSpinBox::valueChanged, this, [this] { emit entered(number()); });
  connect(this, &QDoubleSpinBox::editingFinished, this, [this] {
    before_typing_ = value();
    emit left();
  });
}

bool NumberField::is_empty_value(double value) const {
  return range_.optional && value < range_.minimum - 0.5;
}

std::optional<double> NumberField::number() const {
  if (is_empty_value(value())) return {};
  return value();
}

void NumberField::show_number(std::optional<double> number) {
  const double next = number.value_or(minimum());
  if (!hasFocus()) before_typing_ = next;
  if (next == value()) return;
  const QSignalBlocker quiet(this);
  // A file may hold more digits than the field usually shows: never round them away by showing.
  setDecimals(std::max(range_.decimals, decimals_needed(next)));
  setValue(next);
  before_typing_ = value();
}

QString NumberField::objection(const QString& text) const {
  const TypedNumber typed = read_within(range_, text);
  if (typed.value || !typed.doubt.isEmpty()) return typed.doubt;
  return range_.optional ? QString() : spoken("nothing was entered");
}

QValidator::State NumberField::validate(QString& text, int&) const {
  return objection(text).isEmpty() ? QValidator::Acceptable : QValidator::Intermediate;
}

double NumberField::valueFromText(const QString& text) const {
  return read_within(range_, text).value.value_or(minimum());
}

QString NumberField::textFromValue(double value) const {
  return is_empty_value(value) ? QString() : shown(value, decimals());
}

void NumberField::fixup(QString& text) const {
  const QString why = objection(text);
  if (why.isEmpty()) return;
  if (is_empty_value(before_typing_)) {
    text = range_.when_empty;
    emit refused(why + ".");
  } else {
    text = textFromValue(before_typing_) + suffix();
    emit refused(spoken("{1}; kept {2}.", {why, text}));
  }
}

QSize NumberField::sizeHint() const {
  // Wide enough for any entry with its unit: a unit that is cut off could be taken for another.
  const QFontMetrics metrics = fontMetrics();
  const int widest = std::max(metrics.horizontalAdvance("-000.00" + suffix()),
                              metrics.horizontalAdvance(range_.when_empty));
  const QSize base = QDoubleSpinBox::sizeHint();
  const int buttons = base.height();  // the style's buttons are narrower than they are high
  return {widest + buttons + metrics.horizontalAdvance("0"), std::max(base.height(), 26)};
}

void NumberField::stepBy(int steps) {
  if (is_empty_value(value())) return;
  QDoubleSpinBox::stepBy(steps);
}

void NumberField::wheelEvent(QWheelEvent* event) {
  if (hasFocus()) {
    QDoubleSpinBox::wheelEvent(event);
  } else {
    event->ignore();
  }
}

bool NumberField::event(QEvent* event) {
  // Undo is the document's: a second, hidden one in each field would fight it.
  if (is_undo_key(*event)) {
    event->ignore();
    return true;
  }
  return QDoubleSpinBox::event(event);
}

}  // namespace drapewright::desktop
