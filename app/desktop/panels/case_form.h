#pragma once

#include <QWidget>

class QDateEdit;

namespace drapewright::desktop {

class CaseDocument;
class LimitedField;
class NumberField;
class TextField;

/// Label, body site, date, fluid and where the head lies.
class CaseForm : public QWidget {
  Q_OBJECT

 public:
  explicit CaseForm(CaseDocument& document, QWidget* parent = nullptr);

 private:
  void build_label();
  void build_date();
  void build_head();
  void build_fluid();
  void show_case();

  CaseDocument& document_;
  TextField* label_;
  TextField* site_;
  QDateEdit* date_;
  NumberField* head_;
  LimitedField* fluid_;
};

}  // namespace drapewright::desktop
