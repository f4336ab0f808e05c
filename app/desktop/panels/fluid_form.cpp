#include "app/desktop/panels/fluid_form.h"

#include <QFormLayout>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

FluidForm::FluidForm(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      head_(new NumberField({.minimum = -3600, .maximum = 3600, .step = 15, .unit = "deg"}, this)),
      fluid_(new LimitedField(
          practice::limit("exudate_ml_per_day"),
          {.decimals = 0, .step = 10, .optional = true, .when_empty = spoken("not measured")},
          this)) {
  build_head();
  build_fluid();
  auto* form = new QFormLayout(this);
  form->setContentsMargins(0, 0, 0, 0);
  form->addRow(fluid_);
  form->addRow(spoken("Head lies at"), head_);
  connect(&document, &CaseDocument::case_changed, this, &FluidForm::show_case);
  show_case();
}

void FluidForm::build_head() {
  head_->setObjectName("head_direction_deg");
  head_->setAccessibleName(spoken("Direction to the head"));
  head_->setToolTip(spoken(
      "Which way the patient's head lies in the drawing: 90 is up, 0 is to the right. The hours of "
      "the clock follow it, with 12 to the head."));
  connect(head_, &NumberField::entered, this, [this](std::optional<double> degrees) {
    document_.edit(spoken("head direction"), "head_direction_deg",
                   [&](wound::Case& value) { value.head_direction_deg = degrees.value_or(90); });
  });
  connect(head_, &NumberField::left, this, [this] { document_.end_stretch(); });
}

void FluidForm::build_fluid() {
  connect(&fluid_->field(), &NumberField::entered, this, [this](std::optional<double> amount) {
    document_.edit(spoken("exudate"), "exudate_ml_per_day",
                   [&](wound::Case& value) { value.current().exudate_ml_per_day = amount; });
  });
  connect(&fluid_->field(), &NumberField::left, this, [this] { document_.end_stretch(); });
}

void FluidForm::show_case() {
  head_->show_number(document_.value().head_direction_deg);
  fluid_->show_number(document_.value().current().exudate_ml_per_day);
}

}  // namespace drapewright::desktop
