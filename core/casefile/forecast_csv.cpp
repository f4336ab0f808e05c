#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/casefile/csv.h"
#include "core/casefile/forecast_files.h"

namespace drapewright::casefile {
namespace {

using namespace forecast;

std::string number(double value) { return plain_short(value, 4); }

std::string kind_of(const ItemForecast& item) { return std::string(supplies::name_of(item.kind)); }

}  // namespace

std::string use_to_csv(const Forecast& forecast) {
  std::string out = csv_line({"item", "kind", "week", "from", "to", "mean", "standard_deviation",
                              "low_90", "low_50", "median", "high_50", "high_90", "enough"});
  for (const ItemForecast& item : forecast.items) {
    for (std::size_t week = 0; week < item.weeks.size(); ++week) {
      const Band& band = item.weeks[week];
      const int from = forecast.first_day + 7 * static_cast<int>(week);
      out += csv_line({item.item, kind_of(item), std::to_string(week + 1), date_of_day(from),
                       date_of_day(from + 6), number(band.mean), number(band.spread),
                       std::to_string(band.low90), std::to_string(band.low50),
                       std::to_string(band.middle), std::to_string(band.high50),
                       std::to_string(band.high90), std::to_string(item.enough[week])});
    }
  }
  return out;
}

std::string orders_to_csv(const Forecast& forecast) {
  std::string out = csv_line({"item", "kind", "packs", "quantity", "cost", "need", "on_hand",
                              "on_order", "expiring", "reorder_point", "textbook_reorder_point",
                              "textbook_packs", "arithmetic"});
  for (const ItemForecast& item : forecast.items) {
    if (!item.order) continue;
    const Order& order = *item.order;
    out += csv_line(
        {item.item, kind_of(item), std::to_string(order.packs), std::to_string(order.quantity),
         order.cost ? plain_number(*order.cost, 2) : std::string(), std::to_string(order.need),
         std::to_string(order.on_hand), std::to_string(order.on_order),
         std::to_string(order.expiring), std::to_string(order.reorder_point),
         plain_number(order.textbook_reorder_point, 2), std::to_string(order.textbook_packs),
         order.arithmetic});
  }
  return out;
}

std::string picks_to_csv(const Forecast& forecast, std::size_t week) {
  std::string out = csv_line({"item", "kind", "pick", "expected", "from", "to"});
  const int from = forecast.first_day + 7 * static_cast<int>(week);
  for (const ItemForecast& item : forecast.items) {
    if (item.enough.at(week) == 0) continue;
    out += csv_line({item.item, kind_of(item), std::to_string(item.enough[week]),
                     plain_number(item.weeks[week].mean, 1), date_of_day(from),
                     date_of_day(from + 6)});
  }
  return out;
}

std::string patients_to_csv(const std::vector<PatientSummary>& patients) {
  std::string out =
      csv_line({"file", "label", "start", "end", "next_change", "overdue_days", "area_cm2",
                "area_change_per_week", "dressings", "cost", "stops", "findings"});
  for (const PatientSummary& patient : patients) {
    std::string codes;
    for (const auto& finding : patient.findings) codes += (codes.empty() ? "" : " ") + finding.code;
    out +=
        csv_line({patient.file, patient.label, date_of_day(patient.start), date_of_day(patient.end),
                  patient.running ? date_of_day(patient.next_change) : std::string(),
                  std::to_string(patient.overdue_days), number(patient.area_cm2),
                  number(patient.area_change_per_week), number(patient.dressings),
                  plain_number(patient.cost, 2), std::to_string(patient.stops), codes});
  }
  return out;
}

}  // namespace drapewright::casefile
