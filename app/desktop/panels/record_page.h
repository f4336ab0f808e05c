#pragma once

#include <optional>

#include "app/desktop/jobs/plan_result.h"
#include "app/desktop/panels/page.h"
#include "core/dressing/course_log.h"

class QDateEdit;
class QLabel;
class QPushButton;

namespace drapewright::desktop {

class CaseDocument;
class NumberField;
class TextField;
class WrappedLabel;
class WrappedTable;

/// The dressings of a case: a change is written down here, and what is due stands here. A count
/// that differs is told before it is written, and is a stop of the plan from then on.
class RecordPage : public Page {
  Q_OBJECT

 public:
  /// @param today YYYY-MM-DD, the day of a change unless another is chosen
  RecordPage(CaseDocument& document, const std::string& today, QWidget* parent = nullptr);

  /// A window may stay open overnight: what is due is counted anew, and a day that nobody changed
  /// follows.
  void set_today(const std::string& today);
  /// Takes the planned count over where none was typed.
  void show_result(const PlanResult& result);

 private:
  QWidget* change_rows();
  QWidget* change_buttons();
  NumberField* count_field(const QString& name, const QString& when_empty);
  void show_case();
  void show_table();
  void show_due();
  void compare();
  void advise(const QString& words, bool is_stop);
  bool is_meant(const dressing::Change& change);
  void write_down(bool another_follows);

  CaseDocument& document_;
  std::string today_;
  std::optional<int> planned_;  ///< pieces, by the latest plan
  bool stops_ = false;          ///< the latest plan has a stop
  dressing::CourseLog log_;
  QDateEdit* day_ = nullptr;
  NumberField* out_ = nullptr;
  NumberField* in_ = nullptr;
  TextField* note_ = nullptr;
  WrappedLabel* advice_ = nullptr;
  QPushButton* put_on_ = nullptr;
  QPushButton* taken_off_ = nullptr;
  QLabel* due_ = nullptr;
  WrappedTable* table_ = nullptr;
};

}  // namespace drapewright::desktop
