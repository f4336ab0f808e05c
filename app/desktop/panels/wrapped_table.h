#pragma once

#include <QTableWidget>
#include <vector>

namespace drapewright::desktop {

/// A read-only table whose texts wrap and whose rows are as high as they need, at any width.
class WrappedTable : public QTableWidget {
  Q_OBJECT

 public:
  /// @param shares  how the columns share the width; one with 0 is as wide as it needs to be
  WrappedTable(const QString& name, const QStringList& titles, std::vector<int> shares,
               QWidget* parent = nullptr);

  /// Sets how many rows there are; kept rows keep their place on the screen.
  void set_rows(int count);
  QTableWidgetItem& cell(int row, int column);
  /// Lets the row's first cell take its whole width, or not.
  void set_whole(int row, bool whole);
  /// To be called once the cells are filled.
  void fit();

 protected:
  void resizeEvent(QResizeEvent* event) override;
  void changeEvent(QEvent* event) override;
  void initViewItemOption(QStyleOptionViewItem* option) const override;

 private:
  void share_width();
  int height_of_whole(int row) const;

  std::vector<int> shares_;
};

}  // namespace drapewright::desktop
