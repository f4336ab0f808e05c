#include "app/desktop/panels/wrapped_table.h"

#include <QEvent>
#include <QHeaderView>
#include <QStyle>
#include <algorithm>
#include <utility>

namespace drapewright::desktop {

WrappedTable::WrappedTable(const QString& name, const QStringList& titles, std::vector<int> shares,
                           QWidget* parent)
    : QTableWidget(0, static_cast<int>(titles.size()), parent), shares_(std::move(shares)) {
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
  horizontalHeader()->setMinimumSectionSize(24);
  horizontalHeader()->setSectionResizeMode(QHeaderView::Fixed);
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

void WrappedTable::set_whole(int row, bool whole) {
  const int columns = whole ? columnCount() : 1;
  if (columnSpan(row, 0) != columns) setSpan(row, 0, 1, columns);
}

void WrappedTable::fit() {
  share_width();
  resizeRowsToContents();
  for (int row = 0; row < rowCount(); ++row) {
    // Qt measures a text that takes the whole row as if it had its first column only.
    if (columnSpan(row, 0) > 1) setRowHeight(row, height_of_whole(row));
  }
}

void WrappedTable::share_width() {
  int left = viewport()->width();
  int parts = 0;
  for (int column = 0; column < columnCount(); ++column) {
    const int share = shares_[static_cast<std::size_t>(column)];
    parts += share;
    if (share > 0) continue;
    resizeColumnToContents(column);
    left -= columnWidth(column);
  }
  for (int column = 0; column < columnCount(); ++column) {
    const int share = shares_[static_cast<std::size_t>(column)];
    if (share > 0) setColumnWidth(column, left * share / parts);
  }
}

int WrappedTable::height_of_whole(int row) const {
  const QTableWidgetItem& text = *item(row, 0);
  const int margin = style()->pixelMetric(QStyle::PM_FocusFrameHMargin, nullptr, this) + 1;
  const QRect room(0, 0, viewport()->width() - 2 * margin - 2, 10000);
  const QFontMetrics metrics(text.font());
  const int height = metrics.boundingRect(room, Qt::TextWordWrap, text.text()).height() + 6;
  return std::max(height, verticalHeader()->minimumSectionSize());
}

void WrappedTable::initViewItemOption(QStyleOptionViewItem* option) const {
  QTableWidget::initViewItemOption(option);
  option->decorationAlignment = Qt::AlignHCenter | Qt::AlignTop;  // beside the first line
}

void WrappedTable::resizeEvent(QResizeEvent* event) {
  QTableWidget::resizeEvent(event);
  fit();
}

void WrappedTable::changeEvent(QEvent* event) {
  QTableWidget::changeEvent(event);
  if (event->type() == QEvent::FontChange) fit();
}

}  // namespace drapewright::desktop
