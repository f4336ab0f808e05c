#include "app/desktop/fields/wrapped_label.h"

#include <QEvent>

namespace drapewright::desktop {

WrappedLabel::WrappedLabel(QWidget* parent) : QLabel(parent) { setWordWrap(true); }

void WrappedLabel::show_text(const QString& text) {
  setText(text);
  claim_height();
}

void WrappedLabel::resizeEvent(QResizeEvent* event) {
  QLabel::resizeEvent(event);
  claim_height();
}

void WrappedLabel::changeEvent(QEvent* event) {
  QLabel::changeEvent(event);
  if (event->type() == QEvent::FontChange) claim_height();
}

void WrappedLabel::claim_height() { setMinimumHeight(heightForWidth(width())); }

}  // namespace drapewright::desktop
