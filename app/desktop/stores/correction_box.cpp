#include "app/desktop/stores/correction_box.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/practice/limits.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 28;

/// The field of the rate takes no other.
double within_limits(double per_week) {
  const practice::Limit& limit = practice::limit("extra_dressings_per_week");
  return std::clamp(per_week, limit.minimum, limit.maximum);
}

QPushButton* button(const char* name, QWidget* parent) {
  auto* button = new QPushButton(parent);
  button->setObjectName(name);
  button->setMinimumHeight(least_height);
  return button;
}

}  // namespace

CorrectionBox::CorrectionBox(QWidget* parent)
    : QWidget(parent),
      taken_(kept_rate()),
      words_(quiet_text({}, this)),
      accept_(button("stores_correct", this)),
      back_(button("stores_correct_back", this)) {
  words_->setObjectName("stores_recorded");
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  for (QWidget* each : std::initializer_list<QWidget*>{words_, accept_, back_}) {
    column->addWidget(each);
  }
  hide();
  connect(accept_, &QPushButton::clicked, this, &CorrectionBox::accept);
  connect(back_, &QPushButton::clicked, this, &CorrectionBox::go_back);
}

void CorrectionBox::show_recorded(const forecast::RecordedUse& recorded, double rate) {
  rate_ = rate;
  if (taken_ && !is_same_rate(rate, taken_->per_week)) keep_rate(taken_ = std::nullopt);
  setVisible(recorded.days > 0 || taken_);
  accept_->setVisible(recorded.days > 0);
  back_->setVisible(taken_.has_value());
  if (taken_) back_->setText(spoken("&Back to {1} a week", {format_number(taken_->before, 2)}));
  if (recorded.days > 0) {
    show_offer(recorded);
  } else if (taken_) {
    words_->setText(spoken("Extra dressings: {1} a week, taken over from what was recorded.",
                           {format_number(taken_->per_week, 2)}));
  }
}

void CorrectionBox::show_offer(const forecast::RecordedUse& recorded) {
  offered_ = extra_rate_of(recorded);
  words_->setText(spoken(
      "{1} recorded for {2} planned ({3} %). As extra dressings: {4} a week (95 %: {5} to {6}).",
      {count_of(recorded.recorded, "change", "changes"), format_number(recorded.planned, 1),
       (recorded.bias() < 0 ? "" : "+") + format_number(100 * recorded.bias(), 0),
       format_number(offered_.per_week, 2), format_number(offered_.low, 2),
       format_number(offered_.high, 2)}));
  const bool taken_over = is_same_rate(rate_, within_limits(offered_.per_week));
  accept_->setText(taken_over ? spoken("This rate is taken over") : spoken("Take over this &rate"));
  accept_->setEnabled(!taken_over);
}

/// Back is to what the user had put there, however often a rate was taken over since.
void CorrectionBox::accept() {
  const double before = taken_ ? taken_->before : rate_;
  taken_ = TakenOverRate{within_limits(offered_.per_week), before};
  keep_rate(taken_);
  emit rate_chosen(taken_->per_week);
}

void CorrectionBox::go_back() {
  if (!taken_) return;
  const double before = taken_->before;
  keep_rate(taken_ = std::nullopt);
  emit rate_chosen(before);
}

}  // namespace drapewright::desktop
