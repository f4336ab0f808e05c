#include "app/desktop/section/section_pane.h"

#include <QHBoxLayout>
#include <QLabel>

#include "app/desktop/section/section_view.h"
#include "app/wording/spoken.h"
#include "core/report/section_sketch.h"

namespace drapewright::desktop {
namespace {

constexpr int notes_width_ems = 13;

}  // namespace

SectionPane::SectionPane(QWidget* parent)
    : QWidget(parent), view_(new SectionView(this)), notes_(new QLabel(this)) {
  notes_->setObjectName("section_notes");
  notes_->setWordWrap(true);
  notes_->setAlignment(Qt::AlignTop | Qt::AlignLeft);
  notes_->setFixedWidth(notes_width_ems * fontMetrics().height());
  notes_->setTextInteractionFlags(Qt::TextSelectableByMouse);
  notes_->setForegroundRole(QPalette::PlaceholderText);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(view_, 1);
  row->addWidget(notes_);
  connect(view_, &SectionView::cut_anew, this, &SectionPane::tell);
}

void SectionPane::tell() {
  QStringList notes{spoken("Move A and B on the drawing to cut elsewhere.")};
  if (view_->section().length_cm > 0) {
    for (const std::string& note : report::section_notes(view_->section())) {
      notes << QString::fromStdString(note);
    }
  }
  notes_->setText(notes.join("\n"));
}

}  // namespace drapewright::desktop
