#pragma once

#include <QWidget>

namespace drapewright::desktop {

class CaseDocument;
class LimitedField;
class NumberField;

/// How much fluid the wound gives, and where the patient's head lies in the drawing.
class FluidForm : public QWidget {
  Q_OBJECT

 public:
  explicit FluidForm(CaseDocument& document, QWidget* parent = nullptr);

 private:
  void build_head();
  void build_fluid();
  void show_case();

  CaseDocument& document_;
  NumberField* head_;
  LimitedField* fluid_;
};

}  // namespace drapewright::desktop
