#pragma once

#include <QWidget>

#include "app/desktop/jobs/plan_result.h"

class QLabel;

namespace drapewright::desktop {

class WrappedTable;

/// The plan's figures, each with its unit and the spread that the tracing error gives it.
class MeasuresPanel : public QWidget {
  Q_OBJECT

 public:
  explicit MeasuresPanel(QWidget* parent = nullptr);

  void show_result(const PlanResult& result);
  WrappedTable& table() { return *table_; }

 private:
  WrappedTable* table_;
  QLabel* empty_;
};

}  // namespace drapewright::desktop
