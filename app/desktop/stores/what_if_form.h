#pragma once

#include <QWidget>
#include <vector>

#include "app/desktop/stores/what_if_job.h"

class QComboBox;
class QDoubleSpinBox;
class QListWidget;
class QStackedWidget;

namespace drapewright::desktop {

/// The list of alternatives to compare: those that are ticked. It starts with the usual questions.
class WhatIfForm : public QWidget {
  Q_OBJECT

 public:
  explicit WhatIfForm(QWidget* parent = nullptr);

  std::vector<Alternative> alternatives() const;  ///< the ticked ones

 signals:
  void changed();

 private:
  QWidget* row_of_fields();
  void choose_what();
  Alternative entered() const;
  void add(const Alternative& alternative, bool ticked);
  void remove();

  QComboBox* what_;
  QStackedWidget* values_;
  QDoubleSpinBox* number_;
  QComboBox* sheet_;
  QListWidget* list_;
};

}  // namespace drapewright::desktop
