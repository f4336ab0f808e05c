#include "app/desktop/stores/forecast_form.h"

#include <QDoubleSpinBox>
#include <QFormLayout>
#include <QSpinBox>

#include "app/desktop/fields/limited_field.h"
#include "core/base/say.h"
#include "core/practice/limits.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;

QString words(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// Shares of one are shown as per cent.
bool is_share(std::string_view id) {
  return id.ends_with("_share") || id == "early_end_per_week" || id == "area_change_per_week" ||
         id == "fluid_change_per_week";
}

double factor_of(std::string_view id) { return is_share(id) ? 100 : 1; }

QString unit_of(const practice::Limit& limit) {
  if (!is_share(limit.id)) return limit.unit.empty() ? QString() : " " + words(say(limit.unit));
  return limit.unit.empty() ? " %" : " % " + words(say(limit.unit));
}

}  // namespace

ForecastForm::ForecastForm(QWidget* parent)
    : QWidget(parent), weeks_(new QSpinBox(this)), review_(new QSpinBox(this)) {
  auto* form = new QFormLayout(this);
  form->setRowWrapPolicy(QFormLayout::WrapAllRows);
  form->setVerticalSpacing(3);
  const auto add = [&](const char* id, QSpinBox* box, int standard) {
    const practice::Limit& limit = practice::limit(id);
    box->setRange(static_cast<int>(limit.minimum), static_cast<int>(limit.maximum));
    box->setValue(standard);
    box->setMinimumHeight(least_height);
    box->setSuffix(" " + words(say(limit.unit)));
    box->setToolTip(explanation_of(limit));
    box->setObjectName(id);
    form->addRow(words(say(limit.title)), box);
    connect(box, &QSpinBox::valueChanged, this, &ForecastForm::changed);
  };
  const forecast::Settings standard;
  add("forecast_weeks", weeks_, standard.weeks);
  for (const auto& [id, member] : forecast::numbers) {
    const practice::Limit& limit = practice::limit(id);
    auto* box = new QDoubleSpinBox(this);
    box->setDecimals(2);
    box->setRange(limit.minimum * factor_of(id), limit.maximum * factor_of(id));
    box->setSingleStep(is_share(id) ? 1 : 0.1);
    box->setValue(standard.*member * factor_of(id));
    box->setSuffix(unit_of(limit));
    box->setToolTip(explanation_of(limit));
    box->setMinimumHeight(least_height);
    box->setObjectName(words(id));
    form->addRow(words(say(limit.title)), box);
    connect(box, &QDoubleSpinBox::valueChanged, this, &ForecastForm::changed);
    numbers_.push_back(box);
  }
  add("review_days", review_, standard.review_days);
}

forecast::Settings ForecastForm::settings(int first_day) const {
  forecast::Settings settings;
  settings.first_day = first_day;
  settings.weeks = weeks_->value();
  settings.review_days = review_->value();
  for (std::size_t i = 0; i < numbers_.size(); ++i) {
    const auto& [id, member] = forecast::numbers[i];
    settings.*member = numbers_[i]->value() / factor_of(id);
  }
  return settings;
}

QDoubleSpinBox& ForecastForm::extra_dressings_field() const {
  return *findChild<QDoubleSpinBox*>("extra_dressings_per_week");
}

double ForecastForm::extra_dressings() const { return extra_dressings_field().value(); }

void ForecastForm::set_extra_dressings(double per_week) {
  extra_dressings_field().setValue(per_week);
}

}  // namespace drapewright::desktop
