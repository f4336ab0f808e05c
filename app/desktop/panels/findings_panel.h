#pragma once

#include <QWidget>

#include "app/desktop/jobs/plan_result.h"

class QLabel;

namespace drapewright::desktop {

class WrappedTable;

/// What must be known before going on, gravest first. Selecting a line points out its place.
class FindingsPanel : public QWidget {
  Q_OBJECT

 public:
  explicit FindingsPanel(QWidget* parent = nullptr);

  void show_result(const PlanResult& result);
  WrappedTable& table() { return *table_; }

 signals:
  void place_chosen(drapewright::geometry::Point place_cm);
  /// The line that is selected has no place, or none is selected.
  void no_place_chosen();

 protected:
  void changeEvent(QEvent* event) override;

 private:
  void fill();
  void tell_place();

  std::vector<dressing::Finding> findings_;
  WrappedTable* table_;
  QLabel* empty_;
};

}  // namespace drapewright::desktop
