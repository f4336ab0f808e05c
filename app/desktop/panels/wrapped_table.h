#pragma once

#include <QTableWidget>

namespace drapewright::desktop {

/// A read-only table whose texts wrap and whose rows are as high as they need, at any width.
class WrappedTable : public QTableWidget {
  Q_OBJECT

 public:
  WrappedTable(const QString& name, const QStringList& titles, int stretched_column,
               QWidget* parent = nullptr);

  /// Sets how many rows there are; kept rows keep their place on the screen.
  void set_rows(int count);
  QTableWidgetItem& cell(int row, int column);
  /// To be called once the cells are filled.
  void fit_rows();

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
};

}  // namespace drapewright::desktop
