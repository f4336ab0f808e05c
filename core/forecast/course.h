#pragma once

#include "core/forecast/patient.h"

namespace drapewright::forecast {

/// A course on the forecast's days: when it started, when the dressing is changed and when it may
/// end.
class Course {
 public:
  /// @param start_day        of the course
  /// @param first_change_h   of the next dressing, in hours from the forecast's first day
  Course(int start_day, double first_change_h, const wound::DressingSettings& dressing,
         const Settings& settings);

  int start_day() const { return start_day_; }
  int planned_end() const { return planned_end_; }
  int latest_end() const { return latest_end_; }
  const std::vector<int>& changes() const { return changes_; }  ///< days, up to the latest end
  const std::vector<CourseEnd>& ends() const { return ends_; }

  /// Days of what is put in at the start and then every so many days, none before day 0.
  std::vector<Use> every(double days, int quantity) const;
  /// Days on which a canister is put on: when the last is full, or after `most_days`.
  std::vector<Use> canisters(double ml_per_day, double capacity_ml, double most_days,
                             double change_per_week) const;

 private:
  void list_changes(double first_h, double every_h, double course_days);
  void list_ends(const Settings& settings);

  int start_day_;
  int planned_end_;
  int latest_end_;
  std::vector<int> changes_;
  std::vector<CourseEnd> ends_;
};

}  // namespace drapewright::forecast
