#include "app/desktop/fields/limited_field.h"

#include <QEvent>
#include <QGridLayout>
#include <QLabel>

#include "app/desktop/theme/palette.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

QString text_of(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

NumberRange range_with(const practice::Limit& limit, const LimitedField::Options& options) {
  NumberRange range = range_of(limit);
  range.decimals = options.decimals;
  range.step = options.step;
  range.optional = options.optional;
  range.when_empty = options.when_empty;
  return range;
}

QString usual(const practice::Limit& limit) {
  const std::string words = practice::usual_in_words(limit);
  return words.empty() ? QString() : spoken("usual: {1}", {words});
}

bool is_usual(const practice::Limit& limit, double value) {
  return value >= limit.usual_minimum.value_or(value) &&
         value <= limit.usual_maximum.value_or(value);
}

}  // namespace

QString explanation_of(const practice::Limit& limit) {
  QString text =
      spoken(limit.meaning) + "\n" + spoken("Bounds: {1}", {practice::bounds_in_words(limit)});
  if (!usual(limit).isEmpty()) text += "\n" + spoken("Common practice, {1}", {usual(limit)});
  return text + "\n" + spoken("Rests on: {1}", {practice::describe(limit.source)});
}

QLabel* quiet_text(const QString& text, QWidget* parent) {
  auto* label = new QLabel(text, parent);
  label->setForegroundRole(QPalette::PlaceholderText);
  label->setWordWrap(true);
  return label;
}

LimitedField::LimitedField(const practice::Limit& limit, const Options& options, QWidget* parent)
    : QWidget(parent),
      limit_(limit),
      field_(new NumberField(range_with(limit, options), this)),
      line_(quiet_text({}, this)) {
  auto* title = new QLabel(spoken(limit.title), this);
  title->setBuddy(field_);
  field_->setObjectName(text_of(limit.id));
  field_->setAccessibleName(spoken(limit.title));
  field_->setAccessibleDescription(explanation_of(limit));
  for (QWidget* widget : {static_cast<QWidget*>(field_), static_cast<QWidget*>(title),
                          static_cast<QWidget*>(line_)}) {
    widget->setToolTip(explanation_of(limit));
  }
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->setVerticalSpacing(1);
  grid->addWidget(title, 0, 0);
  grid->addWidget(field_, 0, 1);
  grid->addWidget(line_, 1, 0, 1, 2);
  grid->setColumnStretch(0, 1);
  connect(field_, &NumberField::entered, this, &LimitedField::tell_limits);
  connect(field_, &NumberField::refused, this, [this](const QString& why) { tell(why, true); });
  tell_limits();
}

void LimitedField::show_number(std::optional<double> value) {
  const bool changed = value != field_->number();
  field_->show_number(value);
  if (changed) tell_limits();
}

void LimitedField::tell_limits() {
  QStringList parts{QString::fromStdString(practice::bounds_in_words(limit_))};
  if (!usual(limit_).isEmpty()) parts << usual(limit_);
  parts << spoken(practice::name_of(limit_.source.standing));
  const auto value = field_->number();
  const bool unusual = value && !is_usual(limit_, *value);
  tell((unusual ? spoken("Not usual.") + " " : "") + parts.join(" · "), unusual);
}

void LimitedField::tell(const QString& text, bool warn) {
  line_->setText(text);
  line_->setProperty("warn", warn);
  QPalette own = palette();
  if (warn) own.setColor(QPalette::PlaceholderText, inks(own).warning);
  line_->setPalette(warn ? own : QPalette());
}

void LimitedField::changeEvent(QEvent* event) {
  QWidget::changeEvent(event);
  if (event->type() == QEvent::PaletteChange) tell(line_->text(), line_->property("warn").toBool());
}

}  // namespace drapewright::desktop
