#pragma once

#include <vector>

#include "app/desktop/panels/page.h"
#include "core/practice/cautions.h"

class QCheckBox;

namespace drapewright::desktop {

class CaseDocument;

/// What must be asked before planning. What is ticked is present; that the list was gone through is
/// kept in the case as well.
class CautionsPage : public Page {
  Q_OBJECT

 public:
  explicit CautionsPage(CaseDocument& document, QWidget* parent = nullptr);

 private:
  void add_kind(practice::CautionKind kind);
  QWidget* row_of(const practice::Caution& caution);
  QWidget* reviewed_row();
  void set_present(const std::string& id, bool present);
  void show_case();

  struct Row {
    std::string id;
    QCheckBox* box;
  };
  CaseDocument& document_;
  std::vector<Row> rows_;
  QCheckBox* reviewed_ = nullptr;
};

}  // namespace drapewright::desktop
