#pragma once

#include <QWidget>
#include <functional>

#include "app/desktop/stores/what_if_job.h"

class QCheckBox;
class QLabel;
class QProgressBar;
class QPushButton;

namespace drapewright::desktop {

class SortedTable;
class WhatIfForm;

/// What would be used and ordered if one thing were otherwise, side by side. Worked out in the
/// background when it is asked for.
class WhatIfPage : public QWidget {
  Q_OBJECT

 public:
  /// What the stores' window forecasts from.
  struct Basis {
    QString folder;  ///< empty: none is open
    forecast::Settings settings;
    forecast::Shelf stock;
  };

  explicit WhatIfPage(std::function<Basis()> basis, QWidget* parent = nullptr);

  /// The basis is no longer what the table was worked out from.
  void show_stale();
  SortedTable& table() { return *table_; }
  const std::shared_ptr<const WhatIfResult>& result() const { return result_; }
  bool is_busy() const { return job_.is_busy(); }

 signals:
  void shown_result();

 private:
  QWidget* row_of_buttons();
  void compare();
  void take(const std::shared_ptr<const WhatIfResult>& result);
  void show_table();
  void show_busy(bool busy);
  void tell();

  std::function<Basis()> basis_;
  WhatIfJob job_;
  std::shared_ptr<const WhatIfResult> result_;
  bool stale_ = false;

  WhatIfForm* form_;
  QPushButton* compare_;
  QPushButton* cancel_;
  QProgressBar* progress_;
  QCheckBox* differences_;
  QLabel* told_;
  SortedTable* table_;
};

}  // namespace drapewright::desktop
