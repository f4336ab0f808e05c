#pragma once

#include <QtCharts/QChart>
#include <memory>

#include "core/forecast/forecast.h"

namespace drapewright::desktop {

// Charts of a forecast. They show what it says and calculate nothing. Told apart by lightness,
// line and words, not by hue alone: readable in grey and by the colour-blind.

/// Use of one item by week: expected, with the bands that hold 50 and 90 %.
std::unique_ptr<QChart> draw_use(const forecast::Forecast& forecast,
                                 const forecast::ItemForecast& item, const QPalette& palette);

/// What is left at the end of each week with the bands that hold 50 and 90 %, the reorder point,
/// deliveries and what passes its date; the title says when it runs out.
std::unique_ptr<QChart> draw_stock(const forecast::Forecast& forecast,
                                   const forecast::ItemForecast& item, const QPalette& palette);

/// The dearest of them are drawn, no more.
inline constexpr int most_bars = 14;
/// What each item costs, the dearest at the top.
std::unique_ptr<QChart> draw_cost(const forecast::Forecast& forecast, const QPalette& palette);

}  // namespace drapewright::desktop
