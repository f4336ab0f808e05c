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

std::string range(int low, int high) { return std::to_string(low) + " to " + std::to_string(high); }

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
    out_ += "FORECAST FOR THE STORES, " + day(0) + " to " + day(7 * forecast_.weeks - 1) + "\n";
    line(count_of(static_cast<int>(patients_.size()), "case", "cases") + ", " +
         count_of(forecast_.patients, "course", "courses") + " under way or to start; " +
         count_of(forecast_.weeks, "week", "weeks") + ", service level " +
         format_short(100 * forecast_.service_level, 2) + " %.");
    tell_new_patients();
    line("Expected cost " + format_number(forecast_.cost, 2) + ", " +
         format_number(forecast_.cost_per_patient, 2) + " a patient.");
    line(
        "For the stores, not for the bedside: what a patient needs, the prescriber, local policy "
        "and the device's instructions decide.");
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
    title("FINDINGS");
    for (const auto& finding : forecast_.findings) {
      line(say(dressing::name_of(finding.severity)) + ": " + finding.text);
    }
  }

  void tell_use() {
    title("USE (expected; 90 % band)");
    Columns table({32, -22, -22, -10});
    out_ += table.row({"Item", "first week", count_of(forecast_.weeks, "week", "weeks"), "cost"});
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
    title("ORDERS");
    for (const ItemForecast& item : forecast_.items) {
      if (item.order) tell_order(supplies::shown_name(item.item), *item.order);
    }
    line("All orders: " + format_number(forecast_.order_cost, 2) + ".");
  }

  void tell_order(const std::string& item, const Order& order) {
    line(item + ": " +
         (order.packs > 0 ? "order " + count_of(order.packs, "pack", "packs") : std::string("no order")) +
         ". " + order.arithmetic + " Reorder point " + std::to_string(order.reorder_point) +
         " exact, " + format_number(order.textbook_reorder_point, 1) + " by the textbook" +
         (order.textbook_packs == order.packs
              ? "."
              : ", which would order " + count_of(order.textbook_packs, "pack", "packs") + "."));
  }

  void tell_picks() {
    title("PICK LIST for " + day(0) + " to " + day(6) + " (enough with the service level)");
    Columns table({40, -8});
    for (const ItemForecast& item : forecast_.items) {
      if (item.enough.front() == 0) continue;
      out_ += table.row({supplies::shown_name(item.item), std::to_string(item.enough.front())});
    }
  }

  void tell_recorded() {
    const RecordedUse& use = forecast_.recorded;
    if (use.days == 0) return;
    title("RECORDED AGAINST PLANNED");
    const ExtraRate rate = extra_rate_of(use);
    line(count_of(use.recorded, "dressing", "dressings") + " recorded after the first, " +
         format_number(use.planned, 1) + " planned for the same days: " + percent(use.bias()) +
         ".");
    line("As extra dressings that is " + format_number(rate.per_week, 2) +
         " a week (95 %: " + format_number(rate.low, 2) + " to " + format_number(rate.high, 2) +
         "); to take it over, set extra_dressings_per_week to it.");
    for (const auto& item : use.items) {
      line(supplies::shown_name(item.item) + ": " + format_number(item.recorded, 0) + " for " +
           format_number(item.planned, 1) + ", " + percent(item.bias()));
    }
  }

  void tell_alternatives(const std::vector<NamedForecast>& alternatives) {
    if (alternatives.empty()) return;
    title("WHAT IF (expected over all weeks)");
    Columns table({34, -12, -14, -12});
    out_ += table.row({"", "cost", "a patient", "orders"});
    const auto row = [&](const std::string& name, const Forecast& value) {
      out_ +=
          table.row({name, format_number(value.cost, 2), format_number(value.cost_per_patient, 2),
                     format_number(value.order_cost, 2)});
    };
    row("as it is", forecast_);
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
      out_ += table.row({"  " + item, format_number(pair.first, 1), format_number(pair.second, 1)});
    }
  }

  void tell_cases() {
    std::size_t told = 0, more = 0;
    for (const PatientSummary& patient : patients_) {
      for (const auto& finding : patient.findings) {
        if (finding.severity == dressing::Severity::note) continue;
        if (told == 0) title("CASES TO ASK ABOUT");
        if (told++ < most_cases_told) {
          line(patient.label + " (" + patient.file + "): " + finding.text);
        } else {
          ++more;
        }
      }
    }
    if (more > 0) line("and " + count_of(static_cast<int>(more), "more finding", "more findings") + ": see --json.");
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
