#pragma once

#include <string>
#include <vector>

#include "core/forecast/study.h"

namespace drapewright::casefile {

/// A forecast with one thing changed.
struct Alternative {
  std::string change;  ///< "change_every_h=48"
  forecast::Forecast forecast;
};

/// The forecast as JSON (docs/forecast.schema.json). Equal forecasts give equal text.
std::string forecast_to_json(const forecast::Forecast& forecast, const forecast::Settings& settings,
                             const std::vector<forecast::PatientSummary>& patients,
                             const std::vector<Alternative>& alternatives);

// Tables for a spreadsheet, the first row with the names of the columns.
/// One row for each item and week.
std::string use_to_csv(const forecast::Forecast& forecast);
/// One row for each item of the stock list, with the arithmetic in words.
std::string orders_to_csv(const forecast::Forecast& forecast);
/// What to take off the shelf for a week, counted from 0: enough with the service level.
std::string picks_to_csv(const forecast::Forecast& forecast, std::size_t week);
/// One row for each case.
std::string patients_to_csv(const std::vector<forecast::PatientSummary>& patients);

}  // namespace drapewright::casefile
