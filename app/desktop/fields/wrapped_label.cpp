#include "app/desktop/fields/wrapped_label.h"

#include <QEvent>
#include <algorithm>

namespace drapewright::desktop {

WrappedLabel::WrappedLabel(QWidget* parent) : QLabel(parent) {
  setWordWrap(true);
  // It claims its height itself: layouts that ask for a height by width too leave gaps around it.
  QSizePolicy policy = sizePolicy();
  policy.setHeightForWidth(false);
  setSizePolicy(policy);
}

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

// No less, and no more: what a label wants before it has a width is far too high.
void WrappedLabel::claim_height() {
  setMinimumHeight(0);  // QLabel never answers less than it was given before
  setFixedHeight(std::max(0, heightForWidth(width())));
}

}  // namespace drapewright::desktop
