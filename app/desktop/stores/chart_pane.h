#pragma once

#include <QWidget>
#include <functional>
#include <memory>

#include "app/desktop/stores/caseload_job.h"
#include "app/desktop/stores/number_table.h"

class QChart;
class QGraphicsView;
class QComboBox;
class QLabel;
class QPrinter;

namespace drapewright::desktop {

class ChartView;
class SortedTable;

/// A chart with the table of its numbers below it, for one item at a time or for all. What the
/// chart points at is told above it and chosen in the table, and the other way round.
class ChartPane : public QWidget {
  Q_OBJECT

 public:
  using Draw = std::function<std::unique_ptr<QChart>(
      const forecast::Forecast&, const forecast::ItemForecast*, const QPalette&)>;
  using List = std::function<NumberTable(const forecast::Forecast&, const forecast::ItemForecast*)>;

  /// @param by_item  whether an item is chosen; else draw and list get none
  ChartPane(const QString& name, bool by_item, Draw draw, List list, QWidget* parent = nullptr);

  void show_result(std::shared_ptr<const CaseloadResult> result);
  ChartView& view() { return *view_; }
  SortedTable& table() { return *table_; }
  QComboBox& items() { return *items_; }

  void save();  ///< asks for a name that ends in .svg, .png or .csv
  void print();
  void print_on(QPrinter& printer);  ///< @pre there is a forecast
  /// @return what went wrong; empty when all went well
  QString save_to(const QString& path);

 protected:
  void changeEvent(QEvent* event) override;

 private:
  QWidget* row_of_buttons();
  void fill_items();
  void show_item();
  void tell_row(int row);
  const forecast::ItemForecast* chosen() const;
  std::unique_ptr<QGraphicsView> light_view() const;  ///< @pre an item is chosen

  QString name_;
  bool by_item_;
  Draw draw_;
  List list_;
  std::shared_ptr<const CaseloadResult> result_;
  QComboBox* items_;
  QLabel* told_;
  ChartView* view_;
  SortedTable* table_;
};

}  // namespace drapewright::desktop
