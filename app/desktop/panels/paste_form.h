#pragma once

#include <QWidget>

#include "core/geometry/shape.h"

class QComboBox;
class QLabel;
class QPlainTextEdit;

namespace drapewright::desktop {

/// Coordinates pasted as text, in any notation that core/casefile reads.
class PasteForm : public QWidget {
  Q_OBJECT

 public:
  explicit PasteForm(QWidget* parent = nullptr);

 signals:
  void drawn(const drapewright::geometry::Ring& ring, const QString& what);

 private:
  void use();

  QPlainTextEdit* text_;
  QComboBox* unit_;
  QLabel* message_;
};

}  // namespace drapewright::desktop
