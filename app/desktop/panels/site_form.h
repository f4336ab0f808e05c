#pragma once

#include <QWidget>

class QComboBox;
class QLabel;

namespace drapewright::wound {
struct Case;
}

namespace drapewright::desktop {

class CaseDocument;
class LimitedField;
class TextField;
class WrappedLabel;

/// Where on the body the wound is: in free words, and chosen from the list of places; what the
/// place asks for, which way its clock runs, and the girth of the limb where it is on one.
class SiteForm : public QWidget {
  Q_OBJECT

 public:
  explicit SiteForm(CaseDocument& document, QWidget* parent = nullptr);

 private:
  void build_words();
  void build_places();
  void build_girth();
  void show_case();
  void show_place(const wound::Case& value);
  void show_advice(const wound::Case& value);

  CaseDocument& document_;
  TextField* words_;
  QComboBox* places_;
  QLabel* clock_;
  WrappedLabel* advice_;
  QWidget* limb_;  ///< what is asked of limbs alone
  LimitedField* girth_;
};

}  // namespace drapewright::desktop
