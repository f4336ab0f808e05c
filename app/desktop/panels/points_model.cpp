#include "app/desktop/panels/points_model.h"

#include <QRegularExpression>
#include <QStringList>
#include <cmath>

#include "app/desktop/fields/read_number.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

constexpr int shown_decimals = 4;     // a thousandth of a millimetre
constexpr double farthest_cm = 1000;  // beyond it, a coordinate is a slip

QString shown(double value) { return QString::fromStdString(format_short(value, shown_decimals)); }

double& part(geometry::Point& point, int column) { return column == 0 ? point.x : point.y; }

}  // namespace

void PointsModel::set_ring(const geometry::Ring& ring) {
  if (ring == ring_ && !next_x_ && !next_y_) return;
  if (ring.size() == ring_.size()) {  // keeps the selection where it is
    ring_ = ring;
    emit dataChanged(index(0, 0), index(rowCount() - 1, 1));
    return;
  }
  beginResetModel();
  ring_ = ring;
  next_x_.reset();
  next_y_.reset();
  endResetModel();
}

void PointsModel::insert(int row, const geometry::Ring& points) {
  if (points.empty()) return;
  beginInsertRows({}, row, row + static_cast<int>(points.size()) - 1);
  ring_.insert(ring_.begin() + row, points.begin(), points.end());
  endInsertRows();
  emit ring_edited(points.size() == 1 ? spoken("add point") : spoken("paste points"));
}

void PointsModel::insert_between(int row) {
  if (ring_.size() < 2) return;
  const std::size_t after = static_cast<std::size_t>(row) % ring_.size();
  const std::size_t before = (after + ring_.size() - 1) % ring_.size();
  insert(row, {0.5 * (ring_[before] + ring_[after])});
}

void PointsModel::remove(int row) {
  if (row < 0 || row >= point_count()) return;
  beginRemoveRows({}, row, row);
  ring_.erase(ring_.begin() + row);
  endRemoveRows();
  emit ring_edited(spoken("remove point"));
}

std::optional<geometry::Ring> PointsModel::points_in(const QString& text) {
  static const QRegularExpression between("[\\t; ]+");
  geometry::Ring points;
  for (const QString& line : text.split('\n', Qt::SkipEmptyParts)) {
    const QStringList cells = line.trimmed().split(between, Qt::SkipEmptyParts);
    if (cells.isEmpty()) continue;
    if (cells.size() != 2) return {};
    const auto x = read_number(cells[0]).value;
    const auto y = read_number(cells[1]).value;
    if (!x || !y) return {};
    points.push_back({*x, *y});
  }
  return points;
}

int PointsModel::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : point_count() + 1;
}

int PointsModel::columnCount(const QModelIndex& parent) const { return parent.isValid() ? 0 : 2; }

QVariant PointsModel::data(const QModelIndex& index, int role) const {
  if (role == Qt::TextAlignmentRole) return QVariant(Qt::AlignRight | Qt::AlignVCenter);
  if (role == Qt::AccessibleTextRole) {
    return spoken("{1} of point {2}", {index.column() == 0 ? "x" : "y", index.row() + 1});
  }
  if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
  if (index.row() == point_count()) {
    const auto& typed = index.column() == 0 ? next_x_ : next_y_;
    return typed ? shown(*typed) : QString();
  }
  const auto& point = ring_[static_cast<std::size_t>(index.row())];
  return shown(index.column() == 0 ? point.x : point.y);
}

bool PointsModel::setData(const QModelIndex& index, const QVariant& value, int role) {
  if (role != Qt::EditRole) return false;
  const QString text = value.toString();
  if (text == data(index, Qt::EditRole).toString()) return false;  // nothing was typed
  const TypedNumber typed = read_number(text);
  if (!typed.value || std::abs(*typed.value) > farthest_cm) {
    emit refused(typed.doubt.isEmpty() ? spoken("“{1}” is not within -1000 to 1000 cm", {text})
                                       : typed.doubt);
    return false;
  }
  if (index.row() == point_count()) return set_new_point(index.column(), *typed.value);
  part(ring_[static_cast<std::size_t>(index.row())], index.column()) = *typed.value;
  emit dataChanged(index, index);
  emit ring_edited(spoken("point {1}", {index.row() + 1}));
  return true;
}

bool PointsModel::set_new_point(int column, double value) {
  (column == 0 ? next_x_ : next_y_) = value;
  const QModelIndex changed = index(point_count(), column);
  emit dataChanged(changed, changed);
  if (next_x_ && next_y_) {
    const geometry::Point point{*next_x_, *next_y_};
    next_x_.reset();
    next_y_.reset();
    insert(point_count(), {point});
  }
  return true;
}

QVariant PointsModel::headerData(int section, Qt::Orientation orientation, int role) const {
  if (role != Qt::DisplayRole) return {};
  if (orientation == Qt::Horizontal) return section == 0 ? spoken("x cm") : spoken("y cm");
  return section < point_count() ? QString::number(section + 1) : spoken("new");
}

Qt::ItemFlags PointsModel::flags(const QModelIndex& index) const {
  return QAbstractTableModel::flags(index) | Qt::ItemIsEditable;
}

}  // namespace drapewright::desktop
