#pragma once

#include <QMainWindow>
#include <QTimer>

#include "app/desktop/stores/caseload_job.h"

class QLabel;
class QProgressBar;
class QPushButton;
class QTabWidget;

namespace drapewright::desktop {

class ChartPane;
class CorrectionBox;
class ForecastForm;
class ShelfPage;
class SortedTable;
class WhatIfPage;

/// What a folder of cases will use, the shelf over time and what to order. Beside the main window:
/// it changes no case.
class StoresWindow : public QMainWindow {
  Q_OBJECT

 public:
  /// @param first_day  day number of the forecast's first day
  explicit StoresWindow(int first_day, QWidget* parent = nullptr);

  /// Forecasts and books from this day on: for a window that is left open over midnight.
  void set_today(int first_day);
  void open_folder(const QString& folder);
  /// @return what is wrong with the list; empty when it was taken
  QString open_stock(const QString& file);

  const std::shared_ptr<const CaseloadResult>& result() const { return result_; }
  bool is_busy() const { return job_.is_busy(); }
  ShelfPage& shelf_page() { return *shelf_page_; }

 signals:
  void shown_result();

 private:
  QWidget* build_side();
  void build_pages();
  void build_menu();
  void ask_folder();
  void ask_stock();
  void save_template();
  void save_shown();
  const forecast::Shelf& stock() const;
  QString stock_in_words() const;
  void use_shelf();
  void forecast();
  void take(const std::shared_ptr<const CaseloadResult>& result);
  void show_totals();

  int first_day_;
  QString folder_;
  forecast::Shelf list_;  ///< of stock_file_
  QString stock_file_;    ///< empty: the shelf, or none
  std::shared_ptr<const CaseloadResult> result_;
  CaseloadJob job_;
  QTimer later_;  ///< several fields changed one after the other make one forecast

  ForecastForm* form_;
  QLabel* totals_;
  CorrectionBox* correction_;
  QProgressBar* progress_;
  QPushButton* cancel_;
  QTabWidget* pages_;
  SortedTable* patients_;
  SortedTable* items_;
  SortedTable* orders_;
  SortedTable* picks_;
  SortedTable* findings_;
  ChartPane* use_;
  ChartPane* shelf_;
  ChartPane* cost_;
  SortedTable* recorded_;
  ShelfPage* shelf_page_;
  WhatIfPage* what_if_;
};

}  // namespace drapewright::desktop
