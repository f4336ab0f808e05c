#include "app/desktop/fields/wrapped_check.h"

#include <QCheckBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QMouseEvent>

namespace drapewright::desktop {

WrappedCheck::WrappedCheck(const QString& text, QWidget* parent)
    : QWidget(parent), box_(new QCheckBox(this)) {
  box_->setAccessibleName(text);
  box_->setMinimumSize(24, 24);
  auto* label = new QLabel(text, this);
  label->setWordWrap(true);
  label->setMinimumHeight(24);
  auto* row = new QHBoxLayout(this);
  row->setContentsMargins(0, 0, 0, 0);
  row->addWidget(box_, 0, Qt::AlignTop);
  row->addWidget(label, 1);
}

void WrappedCheck::mouseReleaseEvent(QMouseEvent* event) {
  if (event->button() == Qt::LeftButton && rect().contains(event->position().toPoint())) {
    box_->click();
  }
}

}  // namespace drapewright::desktop
