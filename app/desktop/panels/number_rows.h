#pragma once

#include <QAbstractTableModel>
#include <optional>
#include <vector>

#include "app/desktop/fields/number_range.h"

namespace drapewright::desktop {

/// One column of a table of typed numbers, or of ticks.
struct NumberColumn {
  QString title;  ///< with its unit: "from o'clock"
  QString tip;
  NumberRange range;
  bool is_tick = false;  ///< yes or no, held as 1 or 0; a new row starts with no
};

/// Rows of numbers as a table, with a last, empty row in which the next one is typed: it counts
/// once all its numbers are there. The model shows what it was given and says what is asked of it;
/// whoever owns the numbers changes them and shows them again.
class NumberRows : public QAbstractTableModel {
  Q_OBJECT

 public:
  using Row = std::vector<double>;  ///< one number for each column
  /// @param what  one row in words: "tunnel"
  NumberRows(QString what, std::vector<NumberColumn> columns, QObject* parent);

  void set_rows(std::vector<Row> rows);
  const std::vector<Row>& rows() const { return rows_; }
  int typed_count() const { return static_cast<int>(rows_.size()); }
  /// Forgets what was typed in the last row.
  void clear_next();
  /// What is typed in the last row so far.
  const std::vector<std::optional<double>>& next() const { return next_; }
  const NumberColumn& column(int index) const { return columns_[static_cast<std::size_t>(index)]; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  bool setData(const QModelIndex& index, const QVariant& value, int role) override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
  Qt::ItemFlags flags(const QModelIndex& index) const override;

 signals:
  void number_typed(int row, int column, double value);
  void row_typed(const std::vector<double>& row);
  void refused(const QString& why);
  /// The last row was typed in, and is not complete yet.
  void next_changed();

 private:
  bool is_last(const QModelIndex& index) const { return index.row() == typed_count(); }
  std::optional<double> number_at(const QModelIndex& index) const;
  QString shown(const QModelIndex& index) const;
  bool set_tick(const QModelIndex& index, bool on);
  bool set_text(const QModelIndex& index, const QString& text);
  bool set_next(const QModelIndex& index, double value);
  void replace_rows(std::vector<Row> rows);

  QString what_;
  std::vector<NumberColumn> columns_;
  std::vector<Row> rows_;
  std::vector<std::optional<double>> next_;
};

}  // namespace drapewright::desktop
