#pragma once

#include <QAbstractTableModel>
#include <QStringList>
#include <QVariant>
#include <string>
#include <vector>

namespace drapewright::desktop {

/// A table as it is shown, sorted, copied and saved: texts, numbers with their decimals.
struct NumberTable {
  struct Cell {
    QVariant value;                ///< text, int or double: what is sorted by
    int decimals = 0;              ///< of a double
    QString text() const;          ///< for people
    std::string as_plain() const;  ///< for programs: a point whatever the language
    bool is_number() const { return value.typeId() != QMetaType::QString; }
  };
  QStringList titles;
  std::vector<std::vector<Cell>> rows;
  QString remark = {};  ///< on all of it, for people: told with every row; not in the CSV

  QByteArray as_csv() const;  ///< numbers with a decimal point
};

/// Shows a NumberTable: numbers at the right, sorted as numbers.
class NumberTableModel : public QAbstractTableModel {
  Q_OBJECT

 public:
  using QAbstractTableModel::QAbstractTableModel;

  void show(NumberTable table);
  const NumberTable& table() const { return table_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  /// Qt::UserRole is the value to sort by.
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 private:
  NumberTable table_;
};

}  // namespace drapewright::desktop
