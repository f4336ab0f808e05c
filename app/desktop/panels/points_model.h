#pragma once

#include <QAbstractTableModel>
#include <optional>

#include "core/geometry/shape.h"

namespace drapewright::desktop {

/// The corner points of one outline as a table: x and y in cm, and a last, empty row in which the
/// next point is typed. It holds a copy and says what was done to it; it changes no case.
class PointsModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  using QAbstractTableModel::QAbstractTableModel;

  void set_ring(const geometry::Ring& ring);
  const geometry::Ring& ring() const { return ring_; }
  int point_count() const { return static_cast<int>(ring_.size()); }

  /// Adds points before a row. @param row 0 to point_count()
  void insert(int row, const geometry::Ring& points);
  /// A point halfway to the one before the row, to be moved.
  void insert_between(int row);
  void remove(int row);
  /// Points pasted from a spreadsheet or a text: two numbers a line. Nothing when any line is not.
  static std::optional<geometry::Ring> points_in(const QString& text);

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
  /// The user did this to the outline: "point 3".
  void ring_edited(const QString& what);
  void refused(const QString& why);

 private:
  bool set_new_point(int column, double value);

  geometry::Ring ring_;
  std::optional<double> next_x_, next_y_;  ///< of the empty row, as far as typed
};

}  // namespace drapewright::desktop
