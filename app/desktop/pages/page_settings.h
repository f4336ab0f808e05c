#pragma once

#include <QWidget>
#include <vector>

#include "app/desktop/pages/page_wishes.h"

class QCheckBox;
class QComboBox;

namespace drapewright::desktop {

class NumberField;

/// Which pages, on what paper, and what the check bars of an earlier print measured. Paper and bars
/// belong to a printer and not to a case: they are kept from one run to the next.
class PageSettings : public QWidget {
  Q_OBJECT

 public:
  explicit PageSettings(QWidget* parent = nullptr);

  PageWishes wishes() const;
  /// What needs a plan is offered or not.
  void offer_plan(bool there_is_one);

 signals:
  void changed();

 private:
  QWidget* kind_boxes();
  QWidget* paper_row();
  QWidget* printer_rows();
  QCheckBox* box(const QString& words, const char* name);
  NumberField* bar_field(const QString& name, const char* key);
  void keep_bar(const char* key, double mm);

  struct KindBox {
    report::PageKind kind;
    QCheckBox* box;
  };
  std::vector<KindBox> kinds_;
  QCheckBox* templates_ = nullptr;
  QCheckBox* mirrored_ = nullptr;
  QCheckBox* squares_ = nullptr;
  QComboBox* paper_ = nullptr;
  NumberField* across_ = nullptr;
  NumberField* down_ = nullptr;
};

}  // namespace drapewright::desktop
