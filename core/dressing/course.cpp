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
    return say("{1} d at {2} h: {3}",
               {format_short(settings_.course_days, 2), format_short(settings_.change_every_h, 2),
                count_of(plan_.applications, "application", "applications")});
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
      const std::vector<Insert> figures{count_of(pieces, "piece", "pieces"),
                                        format_number(100 * used, 0)};
      add_per_application(
          opened.item, Kind::filler_sheet, opened.sheets,
          count_of(opened.sheets, "sheet", "sheets"),
          opened.sheets == 1
              ? say("laid out piece by piece: {1}, {2} % of the sheet used", figures)
              : say("laid out piece by piece: {1}, {2} % of the sheets used", figures));
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
      findings_.add(
          {.severity = now ? Severity::warning : Severity::note,
           .code = now ? "stock-short-now" : "stock-short-course",
           .text =
               now ? say("{1}: this dressing takes {2}, the shelf has {3}. Get more before it "
                         "is opened.",
                         {supplies::shown_name(item), format_short(amounts.first, 1), *available})
                   : say("{1}: the course takes {2}, the shelf has {3}. Order in time.",
                         {supplies::shown_name(item), format_short(amounts.second, 1), *available}),
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
                          say("to protect the skin under bridges"));
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
      add_per_application(item, Kind::film_sheet, sheets, count_of(sheets, "sheet", "sheets"),
                          sheets == 1
                              ? say("for {1} cut from it", {count_of(films, "film", "films")})
                              : say("for {1} cut from them", {count_of(films, "film", "films")}));
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
                        say("by area ({1} cm2 of film, {2} cm2 a sheet less its overlap): an "
                            "estimate, and the least there can be",
                            {format_number(area_cm2, 0), format_number(useful_cm2, 0)}),
                        true);
  }

  void list_ports() {
    const int ports = static_cast<int>(plan_.drapes.size());
    add_per_application(generic_name(Kind::port, "Port with tubing"), Kind::port, ports,
                        count_of(ports, "port", "ports"), say("one for each film"));
  }

  // Pump ---------------------------------------------------------------------------------------

  struct Fluid {
    double ml_per_day = 0;
    bool measured = false;
    std::string words;
  };

  Fluid fluid() const {
    if (const auto measured = value_.current().exudate_ml_per_day) {
      return {*measured, true, say("{1} mL/d as measured", {format_short(*measured, 1)})};
    }
    const double rate = practice::limit("exudate_rate_ml_per_cm2_day").standard;
    double area_cm2 = 0;
    for (const WoundMeasures& wound : plan_.wounds) area_cm2 += wound.area.value;
    return {rate * area_cm2, false,
            say("{1} cm2 x {2} mL/cm2/d = {3} mL/d, an estimate by area",
                {format_number(area_cm2, 1), format_short(rate, 2),
                 format_number(rate * area_cm2, 1)})};
  }

  std::string canister_name() const {
    for (const supplies::StockItem& item : stock_) {
      if (item.kind == Kind::canister && item.capacity_ml == settings_.canister_ml) {
        return item.item;
      }
    }
    return say("Canister {1} mL", {format_short(settings_.canister_ml, 0)});
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
         .basis =
             say("The larger of {1} by volume ({2}, x {3} d = {4} mL / {5} mL) and {6} by time "
                 "({3} d / {7} d); one at hand for this application.",
                 {by_volume, flow.words, format_short(settings_.course_days, 2),
                  format_number(course_ml, 0), format_short(settings_.canister_ml, 0), by_time,
                  format_short(settings_.canister_max_days, 2)}),
         .estimate = !flow.measured});
    if (!flow.measured) report_estimated_fluid(flow);
  }

  void report_estimated_fluid(const Fluid& flow) {
    findings_.add(
        {.severity = Severity::note,
         .code = "fluid-estimated",
         .text = say("No amount of fluid was measured: canisters are reckoned with {1}. Published "
                     "rates run from 0.1 to 1.3 mL/cm2/d; enter what the canister shows as "
                     "soon as it is known.",
                     {flow.words}),
         .source = source_of_limit("exudate_rate_ml_per_cm2_day")});
  }

  void list_batteries() {
    const int sets = std::max(1, round_up(settings_.course_days / settings_.battery_days));
    plan_.consumables.push_back(
        {.item = generic_name(Kind::battery, "AA battery"),
         .kind = Kind::battery,
         .per_application = 2,
         .per_course = 2.0 * sets,
         .basis = say("{1} d / {2} d a set: {3} x 2; one set at hand for this "
                      "application.",
                      {format_short(settings_.course_days, 2),
                       format_short(settings_.battery_days, 2), count_of(sets, "set", "sets")})});
  }

  void list_sundries() {
    for (const supplies::Sundry& sundry : supplies::built_in_sundries()) {
      add_per_application(std::string(sundry.item), Kind::other, sundry.per_application,
                          format_short(sundry.per_application, 1), say(sundry.why));
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
