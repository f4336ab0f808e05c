#include "app/desktop/fields/text_field.h"

#include <QKeyEvent>

namespace drapewright::desktop {

bool is_undo_key(const QEvent& event) {
  if (event.type() != QEvent::ShortcutOverride && event.type() != QEvent::KeyPress) return false;
  const auto& key = static_cast<const QKeyEvent&>(event);
  return key.matches(QKeySequence::Undo) || key.matches(QKeySequence::Redo);
}

TextField::TextField(const QString& when_empty, QWidget* parent) : QLineEdit(parent) {
  setPlaceholderText(when_empty);
  setMinimumHeight(26);
}

void TextField::show_text(const QString& text) {
  if (text == this->text()) return;
  setText(text);
  if (!hasFocus()) setCursorPosition(0);  // a long text is read from its beginning
}

bool TextField::event(QEvent* event) {
  if (is_undo_key(*event)) {
    event->ignore();
    return true;
  }
  return QLineEdit::event(event);
}

}  // namespace drapewright::desktop
