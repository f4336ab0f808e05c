#pragma once

#include <QTableView>

#include "app/desktop/stores/number_table.h"

class QSortFilterProxyModel;

namespace drapewright::desktop {

/// A table with tabular figures that is sorted by a click on a column's title.
class SortedTable : public QTableView {
  Q_OBJECT

 public:
  explicit SortedTable(const QString& name, QWidget* parent = nullptr);

  void show_table(NumberTable table);
  const NumberTable& table() const { return model_->table(); }
  /// Brings a row of table() into view and selects it.
  void choose(int row);

 signals:
  /// A row of table() became the current one.
  void chosen(int row);

 private:
  NumberTableModel* model_;
  QSortFilterProxyModel* sorted_;
};

}  // namespace drapewright::desktop
