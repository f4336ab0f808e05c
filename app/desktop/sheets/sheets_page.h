#pragma once

#include <QWidget>

#include "app/desktop/jobs/improve_job.h"
#include "app/desktop/jobs/plan_result.h"

class QLabel;
class QPushButton;
class QScrollArea;
class QSpinBox;

namespace drapewright::desktop {

class CaseDocument;
class ChoiceTable;
class CutView;

/// Which sheets to open: the layout of the filler on its sheets, and what each stock size would
/// take. While it is looked at, a better layout is sought in the background.
class SheetsPage : public QWidget {
  Q_OBJECT

 public:
  explicit SheetsPage(CaseDocument& document, QWidget* parent = nullptr);

  /// Shows a plan of the case as it is, and looks for a better cut of it.
  void show_result(const PlanResult& result);
  /// The case has changed and its plan is late: a search for the old one is dropped.
  void forget();
  bool is_searching() const { return job_.is_busy(); }
  CutView& view() { return *view_; }
  ChoiceTable& table() { return *table_; }

 signals:
  /// The same case's plan, cut better.
  void improved(const drapewright::desktop::PlanResult& result);

 protected:
  void showEvent(QShowEvent* event) override;
  void hideEvent(QHideEvent* event) override;
  bool eventFilter(QObject* watched, QEvent* event) override;

 private:
  QWidget* search_row();
  void search();
  void take(const PlanResult& result);
  void show_plan();
  void show_search();
  void choose(std::size_t thickness, std::size_t choice);

  CaseDocument& document_;
  PlanResult result_;
  bool searched_ = false;  ///< what is shown was looked at for as long as was asked for
  QScrollArea* scroll_;
  CutView* view_;
  ChoiceTable* table_;
  QLabel* advice_;
  QLabel* state_ = nullptr;
  QPushButton* stop_ = nullptr;
  QSpinBox* seconds_ = nullptr;
  ImproveJob job_;
};

}  // namespace drapewright::desktop
