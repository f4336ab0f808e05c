#include "core/report/forecast_text.h"

#include <algorithm>
#include <map>

#include "core/base/calendar.h"
#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/text_columns.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {
namespace {

using namespace forecast;

constexpr std::size_t most_cases_told = 20;

std::string range(int low, int high) { return say("{1} to {2}", {low, high}); }

std::string money(const std::optional<double>& cost) {
  return cost ? format_number(*cost, 2) : std::string("-");
}

std::string percent(double share) {
  return (share > 0 ? "+" : "") + format_number(100 * share, 0) + " %";
}

class Summary {
 public:
  Summary(const Forecast& forecast, const std::vector<PatientSummary>& patients)
      : forecast_(forecast), patients_(patients) {}

  std::string text(const std::vector<NamedForecast>& alternatives) {
    tell_what();
    tell_findings();
    tell_use();
    tell_orders();
    tell_picks();
    tell_recorded();
    tell_alternatives(alternatives);
    tell_cases();
    return std::move(out_);
  }

 private:
  void title(const std::string& words) { out_ += "\n" + words + "\n"; }
  void line(const std::string& words) { out_ += wrapped(words, 2); }

  std::string day(int offset) const { return date_of_day(forecast_.first_day + offset); }

  void tell_what() {
    out_ +=
        say("FORECAST FOR THE STORES, {1} to {2}", {day(0), day(7 * forecast_.weeks - 1)}) + "\n";
    line(say("{1}, {2} under way or to start; {3}, service level {4} %.",
             {count_of(static_cast<int>(patients_.size()), "case", "cases"),
              count_of(forecast_.patients, "course", "courses"),
              count_of(forecast_.weeks, "week", "weeks"),
              format_short(100 * forecast_.service_level, 2)}));
    tell_new_patients();
    line(say("Expected cost {1}, {2} a patient.",
             {format_number(forecast_.cost, 2), format_number(forecast_.cost_per_patient, 2)}));
    line(say(
        "For the stores, not for the bedside: what a patient needs, the prescriber, local policy "
        "and the device's instructions decide."));
  }

  void tell_new_patients() {
    if (forecast_.new_patients_per_week <= 0) return;
    const std::string rate = format_short(forecast_.new_patients_per_week, 2);
    line(forecast_.profiles > 0
             ? say("New patients: {1} a week, like {2}.",
                   {rate, count_of(forecast_.profiles, "chosen case", "chosen cases")})
             : say("New patients: {1} a week, like the present ones.", {rate}));
  }

  void tell_findings() {
    if (forecast_.findings.empty()) return;
    title(say("FINDINGS"));
    for (const auto& finding : forecast_.findings) {
      line(say(dressing::name_of(finding.severity)) + ": " + finding.text);
    }
  }

  void tell_use() {
    title(say("USE (expected; 90 % band)"));
    Columns table({32, -22, -22, -10});
    out_ += table.row(
        {say("Item"), say("first week"), count_of(forecast_.weeks, "week", "weeks"), say("cost")});
    for (const ItemForecast& item : forecast_.items) {
      out_ += table.row({supplies::shown_name(item.item), in_words(item.weeks.front()),
                         in_words(item.total), money(item.cost)});
    }
  }

  static std::string in_words(const Band& band) {
    return format_number(band.mean, 1) + "; " + range(band.low90, band.high90);
  }

  void tell_orders() {
    const auto listed = [](const ItemForecast& item) { return item.order.has_value(); };
    if (!std::ranges::any_of(forecast_.items, listed)) return;
    title(say("ORDERS"));
    for (const ItemForecast& item : forecast_.items) {
      if (item.order) tell_order(supplies::shown_name(item.item), *item.order);
    }
    line(say("All orders: {1}.", {format_number(forecast_.order_cost, 2)}));
  }

  void tell_order(const std::string& item, const Order& order) {
    const std::string what = order.packs > 0 ? count_of(order.packs, "{2}: order {1} pack.",
                                                        "{2}: order {1} packs.", {item})
                                             : say("{1}: no order.", {item});
    line(what + " " + order.arithmetic + " " + reorder_point_in_words(order));
  }

  static std::string reorder_point_in_words(const Order& order) {
    const std::vector<Insert> inserts{order.reorder_point,
                                      format_number(order.textbook_reorder_point, 1),
                                      count_of(order.textbook_packs, "pack", "packs")};
    return order.textbook_packs == order.packs
               ? say("Reorder point {1} exact, {2} by the textbook.", inserts)
               : say("Reorder point {1} exact, {2} by the textbook, which would order {3}.",
                     inserts);
  }

  void tell_picks() {
    title(say("PICK LIST for {1} to {2} (enough with the service level)", {day(0), day(6)}));
    Columns table({40, -8});
    for (const ItemForecast& item : forecast_.items) {
      if (item.enough.front() == 0) continue;
      out_ += table.row({supplies::shown_name(item.item), std::to_string(item.enough.front())});
    }
  }

  void tell_recorded() {
    const RecordedUse& use = forecast_.recorded;
    if (use.days == 0) return;
    title(say("RECORDED AGAINST PLANNED"));
    const ExtraRate rate = extra_rate_of(use);
    line(count_of(use.recorded,
                  "{1} dressing recorded after the first, {2} planned for the same days: {3}.",
                  "{1} dressings recorded after the first, {2} planned for the same days: {3}.",
                  {format_number(use.planned, 1), percent(use.bias())}));
    line(
        say("As extra dressings that is {1} a week (95 %: {2} to {3}); to take it over, set "
            "extra_dressings_per_week to it.",
            {format_number(rate.per_week, 2), format_number(rate.low, 2),
             format_number(rate.high, 2)}));
    for (const auto& item : use.items) {
      line(say("{1}: {2} for {3}, {4}",
               {supplies::shown_name(item.item), format_number(item.recorded, 0),
                format_number(item.planned, 1), percent(item.bias())}));
    }
  }

  void tell_alternatives(const std::vector<NamedForecast>& alternatives) {
    if (alternatives.empty()) return;
    title(say("WHAT IF (expected over all weeks)"));
    Columns table({34, -12, -14, -12});
    out_ += table.row({"", say("cost"), say("a patient"), say("orders")});
    const auto row = [&](const std::string& name, const Forecast& value) {
      out_ +=
          table.row({name, format_number(value.cost, 2), format_number(value.cost_per_patient, 2),
                     format_number(value.order_cost, 2)});
    };
    row(say("as it is"), forecast_);
    for (const auto& [name, value] : alternatives) row(name, value);
    for (const auto& [name, value] : alternatives) tell_difference(name, value);
  }

  void tell_difference(const std::string& name, const Forecast& value) {
    std::map<std::string, std::pair<double, double>> means;
    for (const ItemForecast& item : forecast_.items) means[item.item].first = item.total.mean;
    for (const ItemForecast& item : value.items) means[item.item].second = item.total.mean;
    out_ += "  " + name + ":\n";
    Columns table({34, -12, -14});
    for (const auto& [item, pair] : means) {
      if (pair.first == pair.second) continue;
      out_ += table.row({"  " + supplies::shown_name(item), format_number(pair.first, 1),
                         format_number(pair.second, 1)});
    }
  }

  void tell_cases() {
    std::size_t told = 0, more = 0;
    for (const PatientSummary& patient : patients_) {
      for (const auto& finding : patient.findings) {
        if (finding.severity == dressing::Severity::note) continue;
        if (told == 0) title(say("CASES TO ASK ABOUT"));
        if (told++ < most_cases_told) {
          line(patient.label + " (" + patient.file + "): " + finding.text);
        } else {
          ++more;
        }
      }
    }
    if (more > 0) {
      line(count_of(static_cast<int>(more), "and {1} more finding: see --json.",
                    "and {1} more findings: see --json."));
    }
  }

  const Forecast& forecast_;
  const std::vector<PatientSummary>& patients_;
  std::string out_;
};

}  // namespace

std::string forecast_summary(const Forecast& forecast, const std::vector<PatientSummary>& patients,
                             const std::vector<NamedForecast>& alternatives) {
  return Summary(forecast, patients).text(alternatives);
}

}  // namespace drapewright::report
