#include "app/desktop/panels/number_rows.h"

#include <algorithm>
#include <utility>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

constexpr int shown_decimals = 4;

}  // namespace

NumberRows::NumberRows(QString what, std::vector<NumberColumn> columns, QObject* parent)
    : QAbstractTableModel(parent), what_(std::move(what)), columns_(std::move(columns)) {
  clear_next();
}

void NumberRows::clear_next() {
  next_.clear();
  for (const NumberColumn& column : columns_) {
    next_.push_back(column.is_tick ? std::optional(0.0) : std::nullopt);
  }
  emit dataChanged(index(typed_count(), 0), index(typed_count(), columnCount() - 1));
}

void NumberRows::set_rows(std::vector<Row> rows) {
  if (rows == rows_) return;
  if (rows.size() == rows_.size()) {  // keeps the selection where it is
    rows_ = std::move(rows);
    emit dataChanged(index(0, 0), index(typed_count() - 1, columnCount() - 1));
  } else {
    replace_rows(std::move(rows));
  }
}

/// Tells which rows came or went, so that the selection stays with its row.
void NumberRows::replace_rows(std::vector<Row> rows) {
  const auto first = std::ranges::mismatch(rows, rows_).in1 - rows.begin();
  const int at = static_cast<int>(first);
  const auto change = static_cast<int>(rows.size()) - typed_count();
  if (change > 0) {
    beginInsertRows({}, at, at + change - 1);
    rows_ = std::move(rows);
    endInsertRows();
  } else {
    beginRemoveRows({}, at, at - change - 1);
    rows_ = std::move(rows);
    endRemoveRows();
  }
  emit dataChanged(index(0, 0), index(rowCount() - 1, columnCount() - 1));
}

int NumberRows::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : typed_count() + 1;
}

int NumberRows::columnCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(columns_.size());
}

std::optional<double> NumberRows::number_at(const QModelIndex& index) const {
  const auto column = static_cast<std::size_t>(index.column());
  return is_last(index) ? next_[column] : rows_[static_cast<std::size_t>(index.row())][column];
}

QString NumberRows::shown(const QModelIndex& index) const {
  const auto number = number_at(index);
  return number ? QString::fromStdString(format_short(*number, shown_decimals)) : QString();
}

QVariant NumberRows::data(const QModelIndex& index, int role) const {
  const NumberColumn& column = this->column(index.column());
  switch (role) {
    case Qt::TextAlignmentRole:
      return QVariant(Qt::AlignRight | Qt::AlignVCenter);
    case Qt::ToolTipRole:
      return column.tip;
    case Qt::AccessibleTextRole:
      return spoken("{1} of {2} {3}: {4}",
                    {column.title, is_last(index) ? spoken("new") : QString(), what_,
                     column.is_tick ? (number_at(index) == 1.0 ? spoken("yes") : spoken("no"))
                                    : shown(index)})
          .simplified();
    case Qt::CheckStateRole:
      if (!column.is_tick || is_last(index)) return {};
      return number_at(index) == 1.0 ? Qt::Checked : Qt::Unchecked;
    case Qt::DisplayRole:
      if (column.is_tick)
        return is_last(index) ? "" : (number_at(index) == 1.0 ? spoken("yes") : spoken("no"));
      return shown(index);
    case Qt::EditRole:
      return column.is_tick ? QVariant() : QVariant(shown(index));
    default:
      return {};
  }
}

bool NumberRows::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role == Qt::CheckStateRole) return set_tick(index, value.toInt() == Qt::Checked);
  return role == Qt::EditRole && set_text(index, value.toString());
}

bool NumberRows::set_tick(const QModelIndex& index, bool on) {
  if (is_last(index)) return false;
  emit number_typed(index.row(), index.column(), on ? 1 : 0);
  return true;
}

bool NumberRows::set_text(const QModelIndex& index, const QString& text) {
  if (text.trimmed() == shown(index)) return false;  // nothing was typed
  const TypedNumber typed = read_within(column(index.column()).range, text);
  if (!typed.value) {
    const bool kept = number_at(index).has_value();
    const QString doubt = typed.doubt.isEmpty() ? spoken("nothing was entered") : typed.doubt;
    emit refused(kept ? spoken("{1}; kept {2}.", {doubt, shown(index)}) : doubt + ".");
    return false;
  }
  if (is_last(index)) return set_next(index, *typed.value);
  emit number_typed(index.row(), index.column(), *typed.value);
  return true;
}

bool NumberRows::set_next(const QModelIndex& index, double value) {
  next_[static_cast<std::size_t>(index.column())] = value;
  emit dataChanged(index, index);
  if (!std::ranges::all_of(next_, [](const auto& number) { return number.has_value(); })) {
    emit next_changed();
    return true;
  }
  Row row;
  for (const auto& number : next_) row.push_back(*number);
  clear_next();
  emit row_typed(row);
  return true;
}

QVariant NumberRows::headerData(int section, Qt::Orientation orientation, int role) const {
  if (orientation == Qt::Horizontal) {
    if (role == Qt::DisplayRole) return column(section).title;
    if (role == Qt::ToolTipRole) return column(section).tip;
    return {};
  }
  if (role != Qt::DisplayRole) return {};
  return section < typed_count() ? QString::number(section + 1) : spoken("new");
}

Qt::ItemFlags NumberRows::flags(const QModelIndex& index) const {
  const Qt::ItemFlags plain = QAbstractTableModel::flags(index);
  if (!column(index.column()).is_tick) return plain | Qt::ItemIsEditable;
  return is_last(index) ? plain : plain | Qt::ItemIsUserCheckable;
}

}  // namespace drapewright::desktop
