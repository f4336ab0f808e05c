#pragma once

#include <string>
#include <vector>

#include "core/forecast/forecast.h"

namespace drapewright::forecast {

/// One line of a caseload's table.
struct PatientSummary {
  std::string file;
  std::string label;
  bool running = false;
  int start = 0, end = 0, next_change = 0;  ///< day numbers of the calendar
  int overdue_days = 0;
  double area_cm2 = 0;
  double area_change_per_week = 0;
  bool change_from_series = false;
  double dressings = 0;                     ///< expected over the forecast
  double cost = 0;                          ///< of what is expected, as far as costs are known
  int stops = 0;                            ///< findings of the plan that say stop
  std::vector<dressing::Finding> findings;  ///< those that are the stores' business
};

/// Cases that are read one by one for a forecast. What is kept of each is its summary.
class Study {
 public:
  /// @throws InputError for settings out of bounds
  Study(Settings settings, Shelf stock);

  void add(const std::string& file, const Patient& patient);
  /// New patients will be like this one, or another that is added so; see Caseload.
  /// @param patient  of a case as_newcomer()
  void add_profile(const Patient& patient) { caseload_.add_profile(patient); }

  const Settings& settings() const { return settings_; }
  const Shelf& stock() const { return stock_; }
  const Caseload& caseload() const { return caseload_; }
  const std::vector<PatientSummary>& patients() const { return patients_; }
  Forecast forecast(const Progress& progress = {}) const;

 private:
  double cost_of(const Patient& patient) const;

  Settings settings_;
  Shelf stock_;
  std::map<std::string, double> costs_;
  Caseload caseload_;
  RecordedUseCounter recorded_;
  std::vector<PatientSummary> patients_;
};

/// Whether a finding of a case matters to the stores: a course that is over or longer than common
/// practice, a change that is overdue, a count that does not match, a forecast that is in doubt.
bool concerns_stores(const dressing::Finding& finding);

}  // namespace drapewright::forecast
