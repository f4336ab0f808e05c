#pragma once

#include "app/desktop/stores/caseload_job.h"
#include "app/desktop/stores/number_table.h"

namespace drapewright::desktop {

NumberTable patients_table(const CaseloadResult& result);
/// One row for each item: first week, whole time, cost.
NumberTable items_table(const forecast::Forecast& forecast);
/// One row for each week of one item.
NumberTable use_table(const forecast::Forecast& forecast, const forecast::ItemForecast& item);
NumberTable stock_table(const forecast::Forecast& forecast, const forecast::ItemForecast& item);
/// The day on which an item runs out and how sure that is, if nothing more is ordered.
QString run_out_words(const forecast::Forecast& forecast, const forecast::ShelfForecast& shelf);
/// Items by what they cost, the dearest first.
NumberTable cost_table(const forecast::Forecast& forecast);
/// Every item as it was used by what the cases record, against what was planned for the same days.
NumberTable recorded_table(const forecast::Forecast& forecast);
NumberTable orders_table(const forecast::Forecast& forecast);
NumberTable pick_table(const forecast::Forecast& forecast);
/// The files that could not be read, then findings of the forecast and of the cases, the gravest
/// first.
NumberTable findings_table(const CaseloadResult& result);

}  // namespace drapewright::desktop
