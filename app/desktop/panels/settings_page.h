#pragma once

#include <vector>

#include "app/desktop/panels/page.h"
#include "core/wound/case.h"

class QCheckBox;

namespace drapewright::desktop {

class CaseDocument;
class LimitedField;

/// How the wound is to be dressed: every setting with its unit, its bounds and what they rest on.
class SettingsPage : public Page {
  Q_OBJECT

 public:
  explicit SettingsPage(CaseDocument& document, QWidget* parent = nullptr);

 private:
  struct Entry {
    LimitedField* field;
    double wound::DressingSettings::*member;
  };
  void add_setting(std::string_view id, double wound::DressingSettings::*member, int decimals,
                   double step);
  QWidget* bridge_row();
  void show_case();

  CaseDocument& document_;
  std::vector<Entry> entries_;
  QCheckBox* bridge_ = nullptr;
};

}  // namespace drapewright::desktop
