#include "app/desktop/panels/port_place_row.h"

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>

#include "app/desktop/document/case_document.h"
#include "app/desktop/fields/limited_field.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {

PortPlaceRow::PortPlaceRow(CaseDocument& document, QWidget* parent)
    : QWidget(parent),
      document_(document),
      state_(new QLabel(this)),
      automatic_(new QPushButton(spoken("Automatic"), this)) {
  state_->setObjectName("port_place");
  state_->setWordWrap(true);
  automatic_->setObjectName("automatic_port_place");
  automatic_->setAccessibleName(spoken("Automatic port places"));
  automatic_->setToolTip(spoken(
      "Take the chosen places back: each port goes where it has the most room on filler, its base "
      "clear of the zones."));
  automatic_->setMinimumHeight(26);
  auto* grid = new QGridLayout(this);
  grid->setContentsMargins(0, 0, 0, 0);
  grid->addWidget(state_, 0, 0);
  grid->addWidget(automatic_, 0, 1, Qt::AlignTop);
  grid->addWidget(
      quiet_text(spoken("Drag the port in the drawing, or reach it there with Tab and move it "
                        "by the arrow keys: 1 mm, with Shift 1 cm."),
                 this),
      1, 0, 1, 2);
  grid->setColumnStretch(0, 1);
  connect(automatic_, &QPushButton::clicked, this, [this] { take_back_port_places(document_); });
  connect(&document, &CaseDocument::case_changed, this, &PortPlaceRow::show_case);
  show_case();
}

void PortPlaceRow::show_case() {
  const auto chosen = static_cast<int>(document_.value().dressing.port_places_cm.size());
  state_->setText(chosen == 0   ? spoken("Port's place: automatic, where it has the most room.")
                  : chosen == 1 ? spoken("Port's place: one chosen.")
                                : spoken("Port's place: {1} chosen.", {chosen}));
  automatic_->setEnabled(chosen > 0);
}

void take_back_port_places(CaseDocument& document) {
  document.edit(spoken("automatic port places"), {},
                [](wound::Case& value) { value.dressing.port_places_cm.clear(); });
}

}  // namespace drapewright::desktop
