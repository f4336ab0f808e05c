#pragma once

#include <QLineEdit>

namespace drapewright::desktop {

/// Whether an event is a key for undo or redo, pressed or about to be.
bool is_undo_key(const QEvent& event);

/// One line of text that leaves undo to the document and tells when typing is over.
class TextField : public QLineEdit {
  Q_OBJECT

 public:
  explicit TextField(const QString& when_empty, QWidget* parent = nullptr);

  /// Shows a text without saying that it was typed, and without moving the cursor needlessly.
  void show_text(const QString& text);
  bool event(QEvent* event) override;
};

}  // namespace drapewright::desktop
