#pragma once

#include <QWidget>

#include "app/desktop/document/outline_target.h"

class QAction;
class QListWidget;
class QMenu;
class QPushButton;

namespace drapewright::desktop {

class CaseDocument;

/// The outlines of the case: wounds, their islands, skin zones. Choosing one, or asking for a new
/// one, says what the outline editor works on.
class ShapeList : public QWidget {
  Q_OBJECT

 public:
  explicit ShapeList(CaseDocument& document, QWidget* parent = nullptr);

  const OutlineTarget& target() const { return target_; }
  void choose(const OutlineTarget& target);

 signals:
  void target_changed(const drapewright::desktop::OutlineTarget& target);

 private:
  QPushButton* add_button();
  QAction* add_choice(QMenu& menu, const QString& text, const QString& name, OutlineTarget target);
  OutlineTarget first_target() const;
  void show_case();
  void remove_chosen();

  CaseDocument& document_;
  OutlineTarget target_;
  QListWidget* list_;
  QAction* island_ = nullptr;
  QPushButton* remove_;
};

}  // namespace drapewright::desktop
