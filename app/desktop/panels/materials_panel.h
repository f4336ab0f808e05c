#pragma once

#include <QWidget>

#include "app/desktop/jobs/plan_result.h"
#include "app/desktop/panels/material_rows.h"

class QLabel;
class QPushButton;

namespace drapewright::desktop {

class WrappedTable;

/// What to take from the shelf, each time and over the course; below every line its arithmetic.
class MaterialsPanel : public QWidget {
  Q_OBJECT

 public:
  explicit MaterialsPanel(QWidget* parent = nullptr);

  void show_result(const PlanResult& result);
  WrappedTable& table() { return *table_; }
  const std::vector<MaterialRow>& rows() const { return rows_; }

 public slots:
  void copy() const;

 signals:
  /// The user wants the list in a file.
  void save_wanted();

 private:
  std::vector<MaterialRow> rows_;
  WrappedTable* table_;
  QLabel* empty_;
  QPushButton* copy_;
  QPushButton* save_;
};

}  // namespace drapewright::desktop
