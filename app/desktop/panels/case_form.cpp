#include "app/desktop/panels/case_form.h"

#include <QDateEdit>
#include <QFormLayout>
#include <QLabel>
#include <QSignalBlocker>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/desktop/fields/text_field.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int longest_label = 80;  // the file format's
const QString date_format = "yyyy-MM-dd";

}  // namespace

CaseForm::CaseForm(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      label_(new TextField(spoken("a pseudonym"), this)),
      date_(new QDateEdit(this)) {
  build_label();
  build_date();
  auto* form = new QFormLayout(this);
  form->setContentsMargins(0, 0, 0, 0);
  form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
  form->addRow(spoken("Label"), label_);
  form->addRow(quiet_text(spoken("Never a patient's name or number."), this));
  form->addRow(spoken("Seen on"), date_);
  connect(&document, &CaseDocument::case_changed, this, &CaseForm::show_case);
  show_case();
}

void CaseForm::build_label() {
  label_->setObjectName("label");
  label_->setAccessibleName(spoken("Label"));
  label_->setMaxLength(longest_label);
  connect(label_, &QLineEdit::textEdited, this, [this](const QString& text) {
    if (text.trimmed().isEmpty()) return;  // a case always has a label; see editingFinished
    document_.edit(spoken("label"), "label",
                   [&](wound::Case& value) { value.label = text.trimmed().toStdString(); });
  });
  connect(label_, &QLineEdit::editingFinished, this, [this] {
    document_.end_stretch();
    label_->show_text(QString::fromStdString(document_.value().label));
  });
}

void CaseForm::build_date() {
  date_->setObjectName("date");
  date_->setAccessibleName(spoken("Seen on"));
  date_->setDisplayFormat(date_format);
  date_->setCalendarPopup(true);
  date_->setMinimumHeight(26);
  date_->setFocusPolicy(Qt::StrongFocus);
  date_->setToolTip(spoken("The day on which the wound was looked at: year-month-day."));
  connect(date_, &QDateEdit::dateChanged, this, [this](const QDate& date) {
    document_.edit(spoken("date"), "date", [&](wound::Case& value) {
      value.current().date = date.toString(date_format).toStdString();
    });
  });
  connect(date_, &QDateEdit::editingFinished, this, [this] { document_.end_stretch(); });
}

void CaseForm::show_case() {
  const auto& value = document_.value();
  const QString label = QString::fromStdString(value.label);
  if (label_->text().trimmed() != label && !label_->text().trimmed().isEmpty()) {
    label_->show_text(label);
  } else if (!label_->hasFocus()) {
    label_->show_text(label);
  }
  const QSignalBlocker quiet(date_);
  date_->setDate(QDate::fromString(QString::fromStdString(value.current().date), date_format));
}

}  // namespace drapewright::desktop
