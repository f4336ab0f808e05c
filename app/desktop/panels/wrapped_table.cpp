#include "app/desktop/panels/wrapped_table.h"

#include <QEvent>
#include <QHeaderView>

namespace drapewright::desktop {

WrappedTable::WrappedTable(const QString& name, const QStringList& titles, int stretched_column,
                           QWidget* parent)
    : QTableWidget(0, static_cast<int>(titles.size()), parent) {
  setAccessibleName(name);
  setHorizontalHeaderLabels(titles);
  setEditTriggers(NoEditTriggers);
  setSelectionBehavior(SelectRows);
  setSelectionMode(SingleSelection);
  setShowGrid(false);
  setAlternatingRowColors(true);
  setWordWrap(true);
  setTextElideMode(Qt::ElideNone);
  setTabKeyNavigation(false);  // Tab leaves the table; arrow keys move in it
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setVerticalScrollMode(ScrollPerPixel);
  verticalHeader()->hide();
  verticalHeader()->setMinimumSectionSize(24);
  horizontalHeader()->setHighlightSections(false);
  horizontalHeader()->setDefaultAlignment(Qt::AlignLeft | Qt::AlignVCenter);
  horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
  horizontalHeader()->setSectionResizeMode(stretched_column, QHeaderView::Stretch);
  connect(horizontalHeader(), &QHeaderView::sectionResized, this, &WrappedTable::fit_rows);
}

void WrappedTable::set_rows(int count) {
  setRowCount(count);
  for (int row = 0; row < count; ++row) {
    for (int column = 0; column < columnCount(); ++column) {
      if (item(row, column) == nullptr) setItem(row, column, new QTableWidgetItem);
    }
  }
}

QTableWidgetItem& WrappedTable::cell(int row, int column) { return *item(row, column); }

void WrappedTable::fit_rows() { resizeRowsToContents(); }

void WrappedTable::resizeEvent(QResizeEvent* event) {
  QTableWidget::resizeEvent(event);
  fit_rows();
}

void WrappedTable::changeEvent(QEvent* event) {
  QTableWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit_rows();
}

}  // namespace drapewright::desktop
