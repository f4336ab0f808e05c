#include "app/desktop/stores/tables.h"

#include <algorithm>
#include <map>

#include "app/wording/spoken.h"
#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/supplies/stock_item.h"

namespace drapewright::desktop {
namespace {

using Cell = NumberTable::Cell;
using forecast::Band;
using forecast::Forecast;
using forecast::ItemForecast;

Cell text(const std::string& value) { return {QString::fromStdString(value)}; }
Cell count(int value) { return {value}; }
Cell number(double value, int decimals = 1) { return {value, decimals}; }
Cell money(const std::optional<double>& cost) { return cost ? number(*cost, 2) : text("-"); }
Cell date(int day) { return text(date_of_day(day)); }

Cell week_from(const Forecast& forecast, std::size_t week) {
  return date(forecast.first_day + 7 * static_cast<int>(week));
}

/// "12 to 19"
Cell range(int low, int high) { return text(say("{1} to {2}", {low, high})); }

/// "2026-03-14 (5, 25 %), 2026-03-16 (50 %)": of the run-out days those that lie in the week, each
/// with the chances that it reaches.
Cell run_out_days_in(const Forecast& forecast, const forecast::ShelfForecast& shelf, int week) {
  std::map<int, std::string> chances;
  for (std::size_t i = 0; i < shelf.run_out_days.size(); ++i) {
    const int day = shelf.run_out_days[i];
    if (day / 7 != week) continue;
    std::string& of_day = chances[day];
    of_day += (of_day.empty() ? "" : ", ") + format_short(100 * forecast::run_out_chances[i], 0);
  }
  std::string days;
  for (const auto& [day, of_day] : chances) {
    days += (days.empty() ? "" : ", ") +
            say("{1} ({2} %)", {date_of_day(forecast.first_day + day), of_day});
  }
  return text(days);
}

std::string codes_of(const forecast::PatientSummary& patient) {
  std::string words;
  for (const auto& finding : patient.findings) {
    if (finding.severity == dressing::Severity::note) continue;
    words += (words.empty() ? "" : " ") + finding.text;
  }
  return words;
}

void add(const dressing::Finding& finding, const std::string& where, NumberTable& table) {
  table.rows.push_back(
      {text(say(dressing::name_of(finding.severity))), text(where), text(finding.text)});
}

}  // namespace

NumberTable patients_table(const CaseloadResult& result) {
  NumberTable table{{spoken("Case"), spoken("Course from"), spoken("to"), spoken("Next change"),
                     spoken("Overdue, days"), spoken("Area, cm2"), spoken("Change a week, %"),
                     spoken("Dressings"), spoken("Cost"), spoken("Stops"), spoken("To ask about"),
                     spoken("File")},
                    {}};
  for (const auto& patient : result.patients) {
    table.rows.push_back({text(patient.label), date(patient.start), date(patient.end),
                          patient.running ? date(patient.next_change) : text(say("over")),
                          count(patient.overdue_days), number(patient.area_cm2),
                          number(100 * patient.area_change_per_week), number(patient.dressings),
                          number(patient.cost, 2), count(patient.stops), text(codes_of(patient)),
                          text(patient.file)});
  }
  return table;
}

NumberTable items_table(const Forecast& forecast) {
  NumberTable table{{spoken("Item"), spoken("First week"), spoken("90 % band"), spoken("All weeks"),
                     spoken("90 % band"), spoken("Cost")},
                    {}};
  for (const ItemForecast& item : forecast.items) {
    const Band& week = item.weeks.front();
    table.rows.push_back({text(supplies::shown_name(item.item)), number(week.mean),
                          range(week.low90, week.high90), number(item.total.mean),
                          range(item.total.low90, item.total.high90), money(item.cost)});
  }
  return table;
}

NumberTable use_table(const Forecast& forecast, const ItemForecast& item) {
  NumberTable table{{spoken("Week from"), spoken("Expected"), spoken("Spread"), spoken("50 % band"),
                     spoken("90 % band"), spoken("Enough")},
                    {}};
  for (std::size_t week = 0; week < item.weeks.size(); ++week) {
    const Band& band = item.weeks[week];
    table.rows.push_back({week_from(forecast, week), number(band.mean), number(band.spread),
                          range(band.low50, band.high50), range(band.low90, band.high90),
                          count(item.enough[week])});
  }
  return table;
}

NumberTable stock_table(const Forecast& forecast, const ItemForecast& item) {
  NumberTable table{{spoken("Week from"), spoken("Received"), spoken("Used"), spoken("Short"),
                     spoken("Past date"), spoken("Left at the end"), spoken("50 % band"),
                     spoken("90 % band"), spoken("Short by then, %"), spoken("Run-out days")},
                    {}};
  if (!item.shelf) return table;
  table.remark = run_out_words(forecast, *item.shelf);
  for (std::size_t week = 0; week < item.shelf->weeks.size(); ++week) {
    const auto& shelf = item.shelf->weeks[week];
    const Band& left = shelf.band;
    table.rows.push_back({week_from(forecast, week), number(shelf.received), number(shelf.used),
                          number(shelf.short_of), number(shelf.wasted), number(left.mean),
                          range(left.low50, left.high50), range(left.low90, left.high90),
                          number(100 * shelf.run_out),
                          run_out_days_in(forecast, *item.shelf, static_cast<int>(week))});
  }
  return table;
}

QString run_out_words(const Forecast& forecast, const forecast::ShelfForecast& shelf) {
  const auto& days = shelf.run_out_days;
  const auto date = [&](std::size_t i) { return date_of_day(forecast.first_day + days[i]); };
  constexpr std::size_t middle = forecast::run_out_chances.size() / 2;
  if (days.empty()) return spoken("Lasts to the end of these weeks in 19 of 20 cases.");
  if (days.size() <= middle) {
    return spoken("May run out from {1} on (5 %), though more likely it lasts.", {date(0)});
  }
  if (days.size() < forecast::run_out_chances.size()) {
    return spoken("Runs out on {1} (even odds), from {2} on (5 %).", {date(middle), date(0)});
  }
  return spoken("Runs out on {1} (even odds), from {2} (5 %) to {3} (95 %).",
                {date(middle), date(0), date(days.size() - 1)});
}

NumberTable cost_table(const Forecast& forecast) {
  NumberTable table{{spoken("Item"), spoken("Expected use"), spoken("Unit cost"), spoken("Cost")},
                    {}};
  std::vector<const ItemForecast*> items;
  for (const ItemForecast& item : forecast.items) {
    if (item.cost) items.push_back(&item);
  }
  std::ranges::stable_sort(items, std::greater<>(), [](const auto* item) { return *item->cost; });
  for (const auto* item : items) {
    table.rows.push_back({text(supplies::shown_name(item->item)), number(item->total.mean),
                          money(item->unit_cost), money(item->cost)});
  }
  return table;
}

NumberTable recorded_table(const Forecast& forecast) {
  NumberTable table{{spoken("Item"), spoken("Planned"), spoken("By what was recorded"),
                     spoken("More than planned, %")},
                    {}};
  for (const auto& item : forecast.recorded.items) {
    table.rows.push_back({text(supplies::shown_name(item.item)), number(item.planned),
                          number(item.recorded), number(100 * item.bias())});
  }
  return table;
}

NumberTable orders_table(const Forecast& forecast) {
  NumberTable table{
      {spoken("Item"), spoken("Packs"), spoken("Pieces"), spoken("Cost"), spoken("Reorder point"),
       spoken("by textbook"), spoken("How it is worked out")},
      {}};
  for (const ItemForecast& item : forecast.items) {
    if (!item.order) continue;
    const auto& order = *item.order;
    table.rows.push_back({text(supplies::shown_name(item.item)), count(order.packs),
                          count(order.quantity), money(order.cost), count(order.reorder_point),
                          number(order.textbook_reorder_point), text(order.arithmetic)});
  }
  return table;
}

NumberTable pick_table(const Forecast& forecast) {
  NumberTable table{{spoken("Item"), spoken("Take for the first week"), spoken("Expected")}, {}};
  for (const ItemForecast& item : forecast.items) {
    if (item.enough.front() == 0) continue;
    table.rows.push_back({text(supplies::shown_name(item.item)), count(item.enough.front()),
                          number(item.weeks.front().mean)});
  }
  return table;
}

NumberTable findings_table(const CaseloadResult& result) {
  NumberTable table{{spoken("Weight"), spoken("Where"), spoken("What")}, {}};
  for (const CaseFault& fault : result.faults) {
    table.rows.push_back({text(say("not read")), {fault.file}, {fault.reason}});
  }
  using dressing::Severity;
  for (const Severity weight : {Severity::stop, Severity::warning, Severity::note}) {
    for (const auto& finding : result.forecast.findings) {
      if (finding.severity == weight) add(finding, say("stores"), table);
    }
    for (const auto& patient : result.patients) {
      for (const auto& finding : patient.findings) {
        const bool wanted = finding.severity == weight && weight != Severity::note;
        if (wanted) add(finding, patient.label, table);
      }
    }
  }
  return table;
}

}  // namespace drapewright::desktop
