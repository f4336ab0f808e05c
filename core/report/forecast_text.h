#pragma once

#include <string>
#include <utility>
#include <vector>

#include "core/forecast/study.h"

namespace drapewright::report {

/// A forecast and what was changed in it: "change_every_h=48".
using NamedForecast = std::pair<std::string, forecast::Forecast>;

/// The forecast in words for a terminal: findings, use with its 90 % band, what to order with the
/// arithmetic of every line, what to pick for the first week, recorded against planned use, the
/// alternatives side by side, and the cases that the stores should ask about.
std::string forecast_summary(const forecast::Forecast& forecast,
                             const std::vector<forecast::PatientSummary>& patients,
                             const std::vector<NamedForecast>& alternatives = {});

}  // namespace drapewright::report
