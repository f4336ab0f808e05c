#include "app/desktop/panels/paste_form.h"

#include <QAbstractItemView>
#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>

#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"
#include "core/base/error.h"
#include "core/casefile/outline_text.h"

namespace drapewright::desktop {
PasteForm::PasteForm(QWidget* parent)
    : QWidget(parent),
      text_(new QPlainTextEdit(this)),
      unit_(new QComboBox(this)),
      message_(quiet_text(spoken("The text's outline takes the place of the one that is chosen."),
                          this)) {
  text_->setObjectName("pasted");
  text_->setAccessibleName(spoken("Coordinates as text"));
  text_->setPlaceholderText("0 0\n8 0\n8 5\n0 5");
  text_->setTabChangesFocus(true);
  text_->setMinimumHeight(120);
  unit_->setObjectName("paste_unit");
  unit_->setAccessibleName(spoken("Unit of the text"));
  unit_->view()->setAccessibleName(spoken("Unit of the text"));
  for (const casefile::LengthUnit unit : casefile::length_units) {
    unit_->addItem(QString::fromUtf8(name_of(unit).data()));
  }
  unit_->setMinimumHeight(26);
  auto* use_it = new QPushButton(spoken("Use this outline"), this);
  use_it->setObjectName("use_pasted");
  use_it->setMinimumHeight(28);
  connect(use_it, &QPushButton::clicked, this, &PasteForm::use);
  auto* form = new QFormLayout;
  form->addRow(spoken("The text is in"), unit_);
  auto* column = new QVBoxLayout(this);
  column->setContentsMargins(0, 0, 0, 0);
  column->addWidget(text_);
  column->addLayout(form);
  column->addWidget(use_it);
  column->addWidget(message_);
}

void PasteForm::use() {
  try {
    const auto unit = casefile::length_units[unit_->currentIndex()];
    const auto ring = casefile::outline_from_text(text_->toPlainText().toStdString(), unit);
    message_->setText(spoken("{1} points taken.", {ring.size()}));
    emit drawn(ring, spoken("pasted outline"));
  } catch (const InputError& error) {
    message_->setText(QString::fromUtf8(error.what()));
  }
}

}  // namespace drapewright::desktop
