#pragma once

#include <QWidget>

class QDateEdit;

namespace drapewright::desktop {

class CaseDocument;
class TextField;

/// What the case is called, and when it was seen.
class CaseForm : public QWidget {
  Q_OBJECT

 public:
  explicit CaseForm(CaseDocument& document, QWidget* parent = nullptr);

 private:
  void build_label();
  void build_date();
  void show_case();

  CaseDocument& document_;
  TextField* label_;
  QDateEdit* date_;
};

}  // namespace drapewright::desktop
