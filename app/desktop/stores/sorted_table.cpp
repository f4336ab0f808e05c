#include "app/desktop/stores/sorted_table.h"

#include <QHeaderView>
#include <QSortFilterProxyModel>
#include <algorithm>

namespace drapewright::desktop {
namespace {

constexpr int widest_column = 340;
/// Column widths are fitted to so many rows: thousands would take a second.
constexpr int rows_looked_at = 100;

}  // namespace

SortedTable::SortedTable(const QString& name, QWidget* parent)
    : QTableView(parent),
      model_(new NumberTableModel(this)),
      sorted_(new QSortFilterProxyModel(this)) {
  sorted_->setSourceModel(model_);
  sorted_->setSortRole(Qt::UserRole);
  setModel(sorted_);
  setAccessibleName(name);
  setSortingEnabled(true);
  horizontalHeader()->setSortIndicator(-1, Qt::AscendingOrder);
  horizontalHeader()->setResizeContentsPrecision(rows_looked_at);
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  verticalHeader()->hide();
  verticalHeader()->setDefaultSectionSize(std::max(24, fontMetrics().height() + 6));
  setSelectionBehavior(SelectRows);
  setAlternatingRowColors(true);
  setWordWrap(false);
  connect(selectionModel(), &QItemSelectionModel::currentRowChanged, this,
          [this](const QModelIndex& now) {
            if (now.isValid()) emit chosen(sorted_->mapToSource(now).row());
          });
}

void SortedTable::choose(int row) {
  const QModelIndex cell = sorted_->mapFromSource(model_->index(row, 0));
  if (!cell.isValid()) return;
  selectRow(cell.row());
  scrollTo(cell);
}

void SortedTable::show_table(NumberTable table) {
  // A number far from its row is hard to read: only text is given the rest of the width.
  const bool ends_in_text = table.rows.empty() || !table.rows.front().back().is_number();
  horizontalHeader()->setStretchLastSection(ends_in_text);
  model_->show(std::move(table));
  resizeColumnsToContents();
  for (int column = 0; column < model_->columnCount(); ++column) {
    setColumnWidth(column, std::min(widest_column, columnWidth(column) + 8));
  }
}

}  // namespace drapewright::desktop
