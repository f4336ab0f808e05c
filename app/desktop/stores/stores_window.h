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
class ForecastForm;
class SortedTable;

/// What a folder of cases will use, the shelf over time and what to order. Beside the main window:
/// it changes no case.
class StoresWindow : public QMainWindow {
  Q_OBJECT

 public:
  /// @param first_day  day number of the forecast's first day
  explicit StoresWindow(int first_day, QWidget* parent = nullptr);

  void open_folder(const QString& folder);
  /// @return what is wrong with the list; empty when it was taken
  QString open_stock(const QString& file);

  const std::shared_ptr<const CaseloadResult>& result() const { return result_; }
  bool is_busy() const { return job_.is_busy(); }

 signals:
  void shown_result();

 private:
  QWidget* build_side();
  void build_pages();
  void build_menu();
  void ask_folder();
  void ask_stock();
  void save_template();
  void forecast();
  void take(const std::shared_ptr<const CaseloadResult>& result);
  void show_totals();
  void accept_correction();

  int first_day_;
  QString folder_;
  forecast::Shelf stock_;
  QString stock_file_;
  std::shared_ptr<const CaseloadResult> result_;
  CaseloadJob job_;
  QTimer later_;  ///< several fields changed one after the other make one forecast

  ForecastForm* form_;
  QLabel* totals_;
  QLabel* recorded_;
  QPushButton* correct_;
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
};

}  // namespace drapewright::desktop
