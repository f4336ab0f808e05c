#include "app/desktop/stores/what_if_page.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>

#include "app/desktop/fields/limited_field.h"
#include "app/desktop/stores/sorted_table.h"
#include "app/desktop/stores/what_if_form.h"
#include "app/desktop/stores/what_if_table.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int least_height = 26;

}  // namespace

WhatIfPage::WhatIfPage(std::function<Basis()> basis, QWidget* parent)
    : QWidget(parent),
      basis_(std::move(basis)),
      form_(new WhatIfForm(this)),
      compare_(new QPushButton(spoken("&Work it out"), this)),
      cancel_(new QPushButton(spoken("&Cancel"), this)),
      progress_(new QProgressBar(this)),
      differences_(new QCheckBox(spoken("As &differences"), this)),
      told_(quiet_text({}, this)),
      table_(new SortedTable(spoken("What if"), this)) {
  compare_->setObjectName("what_if_compare");
  cancel_->setObjectName("what_if_cancel");
  differences_->setObjectName("what_if_differences");
  told_->setObjectName("what_if_told");
  progress_->setFormat(spoken("Reading cases, %p %"));
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(6, 6, 6, 4);
  column->addWidget(form_);
  column->addWidget(row_of_buttons());
  column->addWidget(told_);
  column->addWidget(table_, 1);
  show_busy(false);
  tell();
  connect(compare_, &QPushButton::clicked, this, &WhatIfPage::compare);
  connect(cancel_, &QPushButton::clicked, &job_, &WhatIfJob::cancel);
  connect(differences_, &QCheckBox::toggled, this, &WhatIfPage::show_table);
  connect(form_, &WhatIfForm::changed, this, &WhatIfPage::show_stale);
  connect(&job_, &WhatIfJob::finished, this, &WhatIfPage::take);
  connect(&job_, &WhatIfJob::busy_changed, this, &WhatIfPage::show_busy);
  connect(&job_, &WhatIfJob::progressed, this,
          [this](double part) { progress_->setValue(static_cast<int>(100 * part)); });
}

QWidget* WhatIfPage::row_of_buttons() {
  auto* row = new QWidget(this);
  auto* line = new QHBoxLayout(row);
  line->setContentsMargins(0, 0, 0, 0);
  for (QPushButton* each : {compare_, cancel_}) {
    each->setMinimumHeight(least_height);
    line->addWidget(each);
  }
  line->addWidget(progress_, 1);
  line->addStretch(1);
  line->addWidget(differences_);
  return row;
}

void WhatIfPage::compare() {
  const Basis basis = basis_();
  progress_->setValue(0);
  stale_ = false;
  job_.request(basis.folder, basis.settings, basis.stock, form_->alternatives());
}

void WhatIfPage::take(const std::shared_ptr<const WhatIfResult>& result) {
  result_ = result;
  show_table();
  tell();
  emit shown_result();
}

void WhatIfPage::show_table() {
  if (result_) table_->show_table(what_if_table(*result_, differences_->isChecked()));
}

void WhatIfPage::show_stale() {
  stale_ = true;
  tell();
}

void WhatIfPage::show_busy(bool busy) {
  cancel_->setVisible(busy);
  progress_->setVisible(busy);
  tell();
}

void WhatIfPage::tell() {
  const bool has_folder = !basis_().folder.isEmpty();
  const bool has_alternatives = !form_->alternatives().empty();
  compare_->setEnabled(!job_.is_busy() && has_folder && has_alternatives);
  QString text;
  if (!has_folder) {
    text = spoken("Open a folder of cases first.");
  } else if (!has_alternatives) {
    text = spoken("Tick what is to be compared.");
  } else if (result_ && !result_->problem.isEmpty()) {
    text = result_->problem;
  } else if (result_ && !result_->faults.empty()) {
    const CaseFault& first = result_->faults.front();
    text = spoken("In no column: {1}. The first: {2}, {3}",
                  {count_of(static_cast<int>(result_->faults.size()), "case", "cases"), first.file,
                   first.reason});
  }
  QStringList lines;
  if (!text.isEmpty()) lines << text;
  if (result_ && has_folder) {
    const QStringList unknown = without_cost(*result_);
    if (!unknown.isEmpty()) {
      lines << spoken("No unit cost is known for {1}: what needs it looks cheaper than it is.",
                      {unknown.join(", ")});
    }
    if (stale_) lines << spoken("Something was changed since: work it out again.");
  }
  told_->setText(lines.join("\n"));
  told_->setVisible(!lines.isEmpty());
}

}  // namespace drapewright::desktop
