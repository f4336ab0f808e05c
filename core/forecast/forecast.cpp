#include "core/forecast/forecast.h"

#include <algorithm>

#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/finding_list.h"

namespace drapewright::forecast {
namespace {

using dressing::Severity;

constexpr std::size_t even_odds = run_out_chances.size() / 2;

const ShelfItem* line_of(const Shelf& stock, const std::string& item) {
  const auto line = std::ranges::find(stock, item, &ShelfItem::item);
  return line == stock.end() ? nullptr : &*line;
}

std::optional<double> catalogue_cost(const std::string& item) {
  const auto& list = supplies::built_in_catalogue();
  const auto line = std::ranges::find(list, item, &supplies::StockItem::item);
  return line == list.end() ? std::nullopt : line->unit_cost;
}

class Forecaster {
 public:
  Forecaster(const Caseload& caseload, const Shelf& stock, const Settings& settings)
      : caseload_(caseload), stock_(stock), settings_(settings) {
    result_.first_day = settings.first_day;
    result_.weeks = settings.weeks;
    result_.service_level = settings.service_level;
    result_.patients = caseload.patients();
    result_.new_patients_per_week = caseload.arrivals_per_week();
    result_.profiles = caseload.profiles();
  }

  Forecast work_out(const RecordedUse& recorded, const Progress& progress) {
    result_.recorded = recorded;
    const auto names = caseload_.items();
    for (std::size_t i = 0; i < names.size(); ++i) {
      progress.at(static_cast<double>(i) / static_cast<double>(names.size()));
      result_.items.push_back(work_out(names[i]));
    }
    total();
    tell_assumptions();
    result_.findings = findings_.take_sorted();
    return std::move(result_);
  }

 private:
  ItemForecast work_out(const std::string& name) {
    ItemForecast item{.item = name, .kind = caseload_.kind_of(name)};
    for (int week = 0; week < settings_.weeks; ++week) {
      const Quantity& use = caseload_.use(name, 7 * week, 7 * week + 7);
      item.weeks.push_back(band_of(use));
      item.enough.push_back(use.enough_for(settings_.service_level));
    }
    item.total = band_of(caseload_.use(name, 0, settings_.last_day()));
    const ShelfItem* line = line_of(stock_, name);
    item.unit_cost = line != nullptr ? line->unit_cost : std::nullopt;
    if (stock_.empty()) item.unit_cost = catalogue_cost(name);
    if (item.unit_cost) item.cost = item.total.mean * *item.unit_cost;
    if (line != nullptr) follow(*line, item);
    if (line == nullptr && !stock_.empty()) not_listed_.push_back(name);
    return item;
  }

  void follow(const ShelfItem& line, ItemForecast& item) {
    const UseBetween use = [&](int from, int to) { return caseload_.use(item.item, from, to); };
    item.shelf = follow_shelf(line, settings_.first_day, settings_.weeks, use);
    item.order =
        order_for(line, settings_.first_day, settings_.review_days, settings_.service_level, use);
    remark(item);
  }

  void remark(const ItemForecast& item) {
    const ShelfForecast& shelf = *item.shelf;
    const std::string name = supplies::shown_name(item.item);
    remark_run_out(name, shelf);
    if (shelf.wasted_at_start > 0) {
      add(Severity::warning, "stock-past-date",
          say("{1}: {2} on the shelf are past their date. Take them off it.",
              {name, format_short(shelf.wasted_at_start, 0)}));
    }
    if (shelf.wasted - shelf.wasted_at_start >= 0.5) {
      add(Severity::note, "stock-will-expire",
          say("{1}: about {2} will pass their date unused.",
              {name, format_number(shelf.wasted - shelf.wasted_at_start, 1)}));
    }
    if (shelf.out_of_order) {
      add(Severity::note, "delivery-expires-first",
          say("{1}: a delivery expires before what is on the shelf; its waste comes out too low.",
              {name}));
    }
  }

  /// The day and how far it is in doubt, as far as the forecast reaches.
  void remark_run_out(const std::string& name, const ShelfForecast& shelf) {
    const auto& days = shelf.run_out_days;
    if (days.empty()) return;
    const auto dated = [&](std::size_t chance) {
      return chance < days.size() ? date_of_day(settings_.first_day + days[chance]) : "";
    };
    const std::vector<Insert> inserts{name, dated(0), format_number(shelf.short_of, 1),
                                      dated(even_odds), dated(run_out_chances.size() - 1)};
    std::string text;
    if (days.size() == run_out_chances.size()) {
      text =
          say("{1}: runs out on {4} (even odds), from {2} (5 %) to {5} (95 %), if nothing more "
              "is ordered; expected to be short by {3} in all.",
              inserts);
    } else if (days.size() > even_odds) {
      text =
          say("{1}: runs out on {4} (even odds), from {2} on (5 %), if nothing more is ordered; "
              "expected to be short by {3} in all.",
              inserts);
    } else {
      text =
          say("{1}: may run out from {2} on (5 %), though more likely it lasts, if nothing more "
              "is ordered; expected to be short by {3} in all.",
              inserts);
    }
    add(Severity::warning, "stock-runs-out", text);
  }

  void total() {
    for (const ItemForecast& item : result_.items) {
      result_.cost += item.cost.value_or(0);
      if (item.order) result_.order_cost += item.order->cost.value_or(0);
    }
    const double patients = result_.patients + settings_.new_patients_per_week * settings_.weeks;
    if (patients > 0) result_.cost_per_patient = result_.cost / patients;
  }

  void add(Severity severity, const std::string& code, const std::string& text) {
    findings_.add(
        {.severity = severity, .code = code, .text = text, .source = dressing::own_rule()});
  }

  void tell_assumptions() {
    if (!not_listed_.empty()) {
      std::string names;
      for (const auto& name : not_listed_) {
        names += (names.empty() ? "" : "; ") + supplies::shown_name(name);
      }
      add(Severity::warning, "not-on-stock-list",
          say("Used, but not on the stock list by that name, so nothing is said of stock or "
              "orders: {1}.",
              {names}));
    }
    if (stock_.empty() && !result_.items.empty()) {
      add(Severity::note, "costs-invented",
          say("No stock list was given: costs are those of the built-in catalogue, which are "
              "invented."));
    }
    add(Severity::note, "assumptions",
        say("Assumed, with no source: {1} extra dressings a week, {2} % of courses end early in a "
            "week, {3} % are extended by {4} days. Put your own counts in their place.",
            {format_short(settings_.extra_dressings_per_week, 2),
             format_short(100 * settings_.early_end_per_week, 1),
             format_short(100 * settings_.extension_share, 1),
             format_short(settings_.extension_days, 1)}));
  }

  const Caseload& caseload_;
  const Shelf& stock_;
  const Settings& settings_;
  Forecast result_;
  std::vector<std::string> not_listed_;
  dressing::FindingList findings_;
};

}  // namespace

Forecast forecast_of(const Caseload& caseload, const RecordedUse& recorded, const Shelf& stock,
                     const Settings& settings, const Progress& progress) {
  check(settings);
  for (const ShelfItem& item : stock) check(item);
  return Forecaster(caseload, stock, settings).work_out(recorded, progress);
}

Shelf stock_template() {
  Shelf shelf;
  for (const supplies::StockItem& item : supplies::built_in_catalogue()) {
    shelf.push_back({.item = item.item, .kind = item.kind, .unit_cost = item.unit_cost});
  }
  for (const supplies::Sundry& sundry : supplies::built_in_sundries()) {
    shelf.push_back({.item = std::string(sundry.item), .kind = supplies::Kind::other});
  }
  return shelf;
}

}  // namespace drapewright::forecast
