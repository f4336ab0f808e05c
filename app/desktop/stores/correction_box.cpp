#include "app/desktop/stores/correction_box.h"

#include <QLabel>
#include <QPushButton>
#include <QVBoxLayout>
#include <cmath>
#include <utility>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 28;
/// The field of the rate has two decimals.
constexpr double rounding = 0.005;

QPushButton* button(const char* name, QWidget* parent) {
  auto* button = new QPushButton(parent);
  button->setObjectName(name);
  button->setMinimumHeight(least_height);
  return button;
}

}  // namespace

CorrectionBox::CorrectionBox(QWidget* parent)
    : QWidget(parent),
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
  setVisible(recorded.days > 0);
  if (recorded.days == 0) return;
  rate_ = rate;
  offered_ = extra_rate_of(recorded);
  words_->setText(spoken(
      "{1} recorded for {2} planned ({3} %). As extra dressings: {4} a week (95 %: {5} to {6}).",
      {count_of(recorded.recorded, "change", "changes"), format_number(recorded.planned, 1),
       (recorded.bias() < 0 ? "" : "+") + format_number(100 * recorded.bias(), 0),
       format_number(offered_.per_week, 2), format_number(offered_.low, 2),
       format_number(offered_.high, 2)}));
  const bool taken_over = std::abs(rate - offered_.per_week) <= rounding;
  if (!taken_over) before_.reset();
  accept_->setText(taken_over ? spoken("This rate is taken over") : spoken("Take over this &rate"));
  accept_->setEnabled(!taken_over);
  back_->setVisible(before_.has_value());
  if (before_) back_->setText(spoken("&Back to {1} a week", {format_number(*before_, 2)}));
}

void CorrectionBox::accept() {
  const double before = rate_;
  emit rate_chosen(offered_.per_week);
  before_ = before;
}

void CorrectionBox::go_back() {
  if (before_) emit rate_chosen(*std::exchange(before_, std::nullopt));
}

}  // namespace drapewright::desktop
