#include "core/dressing/course.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/film_sheet.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

using supplies::Kind;

/// Rounds up, but not over a rounding error: 336 h / 48 h is 7, not 8.
int round_up(double quotient) { return static_cast<int>(std::ceil(quotient - 1e-9)); }

class CourseLister {
 public:
  CourseLister(Plan& plan, const wound::Case& value, FindingList& findings)
      : plan_(plan),
        value_(value),
        settings_(value.dressing),
        stock_(wound::stock_of(value)),
        findings_(findings) {}

  void list() {
    plan_.applications = applications_over(settings_.course_days, settings_.change_every_h);
    list_filler();
    list_film();
    list_ports();
    list_canisters();
    list_batteries();
    list_sundries();
    check_shelf();
  }

 private:
  std::string course_in_words() const {
    return format_short(settings_.course_days, 2) + " d at " +
           format_short(settings_.change_every_h, 2) +
           " h: " + count_of(plan_.applications, "application", "applications");
  }

  void add_per_application(std::string item, Kind kind, double each, const std::string& what,
                           const std::string& why = {}, bool estimate = false) {
    plan_.consumables.push_back(
        {.item = std::move(item),
         .kind = kind,
         .per_application = each,
         .per_course = each * plan_.applications,
         .basis = course_in_words() + " x " + what + (why.empty() ? "" : ", " + why) + ".",
         .estimate = estimate});
  }

  std::string generic_name(Kind kind, std::string fallback) const {
    const auto found = std::ranges::find(stock_, kind, &supplies::StockItem::kind);
    return found == stock_.end() ? std::move(fallback) : found->item;
  }

  // Filler -----------------------------------------------------------------------------------

  void list_filler() {
    for (const SheetComparison& comparison : plan_.sheet_comparison) {
      for (const SheetChoice& choice : comparison.choices) {
        if (choice.chosen) list_opened(choice);
      }
    }
  }

  void list_opened(const SheetChoice& choice) {
    for (const SheetChoice::Count& opened : choice.opened) {
      int pieces = 0;
      double used = 0;
      for (const CutSheet& sheet : plan_.cut_layout) {
        if (sheet.item != opened.item) continue;
        pieces += static_cast<int>(sheet.placements.size());
        used += sheet.used_fraction / opened.sheets;
      }
      add_per_application(opened.item, Kind::filler_sheet, opened.sheets,
                          count_of(opened.sheets, "sheet", "sheets"),
                          "laid out piece by piece: " + count_of(pieces, "piece", "pieces") + ", " +
                              format_number(100 * used, 0) + " % of the " +
                              (opened.sheets == 1 ? "sheet" : "sheets") + " used");
    }
  }

  // Shelf --------------------------------------------------------------------------------------

  /// What the shelf has of an item; nothing where it is not counted or the stock has no such item.
  std::optional<int> on_shelf(const std::string& item) const {
    std::optional<int> count;
    for (const supplies::StockItem& line : stock_) {
      if (line.item != item) continue;
      if (!line.available) return std::nullopt;
      count = count.value_or(0) + *line.available;
    }
    return count;
  }

  /// Whether this dressing, and else the whole course, asks for more than the shelf has.
  void check_shelf() {
    std::map<std::string, std::pair<double, double>> wanted;  // of this dressing, of the course
    for (const Consumable& line : plan_.consumables) {
      wanted[line.item].first += line.per_application;
      wanted[line.item].second += line.per_course;
    }
    for (const auto& [item, amounts] : wanted) {
      const auto available = on_shelf(item);
      if (!available || amounts.second <= *available) continue;
      const bool now = amounts.first > *available;
      findings_.add({.severity = now ? Severity::warning : Severity::note,
                     .code = now ? "stock-short-now" : "stock-short-course",
                     .text = item + ": " + (now ? "this dressing" : "the course") + " takes " +
                             format_short(now ? amounts.first : amounts.second, 1) +
                             ", the shelf has " + std::to_string(*available) +
                             (now ? ". Get more before it is opened." : ". Order in time."),
                     .source = own_rule()});
    }
  }

  // Film and port ------------------------------------------------------------------------------

  void list_film() {
    std::map<std::string, int> sheets;
    std::map<std::string, int> under_bridges;
    double unplaced_cm2 = 0;
    for (const Drape& drape : plan_.drapes) {
      count_own(drape.sheets, sheets);
      count_own(drape.protection_sheets, under_bridges);
      if (drape.sheets.empty()) unplaced_cm2 += drape.area_cm2;
    }
    for (const auto& [item, count] : sheets) {
      add_per_application(item, Kind::film_sheet, count, count_of(count, "sheet", "sheets"));
    }
    for (const auto& [item, count] : under_bridges) {
      add_per_application(item, Kind::film_sheet, count, count_of(count, "sheet", "sheets"),
                          "to protect the skin under bridges");
    }
    list_shared_film();
    if (unplaced_cm2 > 0) list_film_by_area(unplaced_cm2);
  }

  static void count_own(const std::vector<FilmSheet>& sheets, std::map<std::string, int>& counts) {
    for (const FilmSheet& sheet : sheets) {
      if (sheet.shared == 0) ++counts[sheet.item];
    }
  }

  void list_shared_film() {
    std::map<std::string, std::pair<int, int>> shared;  // sheets, films
    for (const CutSheet& sheet : plan_.film_layout) {
      ++shared[sheet.item].first;
      shared[sheet.item].second += static_cast<int>(sheet.placements.size());
    }
    for (const auto& [item, counts] : shared) {
      const auto& [sheets, films] = counts;
      add_per_application(
          item, Kind::film_sheet, sheets, count_of(sheets, "sheet", "sheets"),
          "for " + count_of(films, "film", "films") + " cut from " + (sheets == 1 ? "it" : "them"));
    }
  }

  void list_film_by_area(double area_cm2) {
    const supplies::StockItem* sheet = FilmShelf(stock_).largest();
    if (sheet == nullptr) return;
    // A sheet gives what it has less the overlap with its neighbours.
    const double overlap_cm = settings_.film_overlap_cm;
    const double useful_cm2 = std::max(1.0, *sheet->length_cm - overlap_cm) *
                              std::max(1.0, *sheet->width_cm - overlap_cm);
    const int sheets = round_up(area_cm2 / useful_cm2);
    add_per_application(sheet->item, Kind::film_sheet, sheets, count_of(sheets, "sheet", "sheets"),
                        "by area (" + format_number(area_cm2, 0) + " cm2 of film, " +
                            format_number(useful_cm2, 0) +
                            " cm2 a sheet less its overlap): an estimate, and the least there "
                            "can be",
                        true);
  }

  void list_ports() {
    const int ports = static_cast<int>(plan_.drapes.size());
    add_per_application(generic_name(Kind::port, "Port with tubing"), Kind::port, ports,
                        count_of(ports, "port", "ports"), "one for each film");
  }

  // Pump ---------------------------------------------------------------------------------------

  struct Fluid {
    double ml_per_day = 0;
    bool measured = false;
    std::string words;
  };

  Fluid fluid() const {
    if (const auto measured = value_.current().exudate_ml_per_day) {
      return {*measured, true, format_short(*measured, 1) + " mL/d as measured"};
    }
    const double rate = practice::limit("exudate_rate_ml_per_cm2_day").standard;
    double area_cm2 = 0;
    for (const WoundMeasures& wound : plan_.wounds) area_cm2 += wound.area.value;
    return {rate * area_cm2, false,
            format_number(area_cm2, 1) + " cm2 x " + format_short(rate, 2) +
                " mL/cm2/d = " + format_number(rate * area_cm2, 1) + " mL/d, an estimate by area"};
  }

  std::string canister_name() const {
    for (const supplies::StockItem& item : stock_) {
      if (item.kind == Kind::canister && item.capacity_ml == settings_.canister_ml) {
        return item.item;
      }
    }
    return "Canister " + format_short(settings_.canister_ml, 0) + " mL";
  }

  void list_canisters() {
    const Fluid flow = fluid();
    const double course_ml = flow.ml_per_day * settings_.course_days;
    const int by_volume = round_up(course_ml / settings_.canister_ml);
    const int by_time = round_up(settings_.course_days / settings_.canister_max_days);
    const int canisters = std::max({1, by_volume, by_time});
    plan_.consumables.push_back(
        {.item = canister_name(),
         .kind = Kind::canister,
         .per_application = 1,
         .per_course = static_cast<double>(canisters),
         .basis = "The larger of " + std::to_string(by_volume) + " by volume (" + flow.words +
                  ", x " + format_short(settings_.course_days, 2) +
                  " d = " + format_number(course_ml, 0) + " mL / " +
                  format_short(settings_.canister_ml, 0) + " mL) and " + std::to_string(by_time) +
                  " by time (" + format_short(settings_.course_days, 2) + " d / " +
                  format_short(settings_.canister_max_days, 2) +
                  " d); one at hand for this application.",
         .estimate = !flow.measured});
    if (!flow.measured) report_estimated_fluid(flow);
  }

  void report_estimated_fluid(const Fluid& flow) {
    findings_.add({.severity = Severity::note,
                   .code = "fluid-estimated",
                   .text = "No amount of fluid was measured: canisters are reckoned with " +
                           flow.words +
                           ". Published rates run from 0.1 to 1.3 mL/cm2/d; enter what the "
                           "canister shows as soon as it is known.",
                   .source = source_of_limit("exudate_rate_ml_per_cm2_day")});
  }

  void list_batteries() {
    const int sets = std::max(1, round_up(settings_.course_days / settings_.battery_days));
    plan_.consumables.push_back({.item = generic_name(Kind::battery, "AA battery"),
                                 .kind = Kind::battery,
                                 .per_application = 2,
                                 .per_course = 2.0 * sets,
                                 .basis = format_short(settings_.course_days, 2) + " d / " +
                                          format_short(settings_.battery_days, 2) +
                                          " d a set: " + count_of(sets, "set", "sets") +
                                          " x 2; one set at hand for this application."});
  }

  void list_sundries() {
    for (const supplies::Sundry& sundry : supplies::built_in_sundries()) {
      add_per_application(std::string(sundry.item), Kind::other, sundry.per_application,
                          format_short(sundry.per_application, 1), std::string(sundry.why));
    }
  }

  Plan& plan_;
  const wound::Case& value_;
  const wound::DressingSettings& settings_;
  const supplies::StockList& stock_;
  FindingList& findings_;
};

}  // namespace

int applications_over(double course_days, double change_every_h) {
  return std::max(1, round_up(course_days * 24 / change_every_h));
}

void list_consumables(Plan& plan, const wound::Case& value, FindingList& findings) {
  CourseLister(plan, value, findings).list();
}

}  // namespace drapewright::dressing
