#include "app/desktop/stores/number_table.h"

#include <cstdlib>

#include "core/base/numbers.h"
#include "core/casefile/csv.h"

namespace drapewright::desktop {

namespace {

constexpr qsizetype longest_line = 13;

/// Numbers are narrower than their titles: a long title is broken at the space nearest its middle.
QString in_two_lines(QString title) {
  if (title.size() <= longest_line) return title;
  qsizetype best = -1;
  for (qsizetype at = title.indexOf(' '); at >= 0; at = title.indexOf(' ', at + 1)) {
    if (best < 0 || std::abs(2 * at - title.size()) < std::abs(2 * best - title.size())) best = at;
  }
  if (best >= 0) title[best] = '\n';
  return title;
}

}  // namespace

QString NumberTable::Cell::text() const {
  if (value.typeId() == QMetaType::Double) {
    return QString::fromStdString(format_number(value.toDouble(), decimals));
  }
  return value.toString();
}

std::string NumberTable::Cell::as_plain() const {
  if (value.typeId() == QMetaType::Double) return plain_number(value.toDouble(), decimals);
  return value.toString().toStdString();
}

QByteArray NumberTable::as_csv() const {
  std::vector<std::string> cells;
  for (const QString& title : titles) cells.push_back(title.toStdString());
  std::string text = casefile::csv_line(cells);
  for (const auto& row : rows) {
    cells.clear();
    for (const Cell& cell : row) cells.push_back(cell.as_plain());
    text += casefile::csv_line(cells);
  }
  return QByteArray::fromStdString(text);
}

void NumberTableModel::show(NumberTable table) {
  beginResetModel();
  table_ = std::move(table);
  endResetModel();
}

int NumberTableModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(table_.rows.size());
}

int NumberTableModel::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(table_.titles.size());
}

QVariant NumberTableModel::data(const QModelIndex& index, int role) const {
  const auto& cell =
      table_.rows[static_cast<std::size_t>(index.row())][static_cast<std::size_t>(index.column())];
  if (role == Qt::DisplayRole || role == Qt::ToolTipRole) return cell.text();
  if (role == Qt::UserRole) return cell.value;
  if (role == Qt::TextAlignmentRole) {
    return QVariant::fromValue(Qt::AlignVCenter |
                               (cell.is_number() ? Qt::AlignRight : Qt::AlignLeft));
  }
  return {};
}

QVariant NumberTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation != Qt::Horizontal) return {};
  if (role != Qt::DisplayRole) return {};
  const QString title = table_.titles.value(section);
  const bool numbers =
      !table_.rows.empty() && table_.rows.front().at(static_cast<std::size_t>(section)).is_number();
  return numbers ? in_two_lines(title) : title;
}

}  // namespace drapewright::desktop
