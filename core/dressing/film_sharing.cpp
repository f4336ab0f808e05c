#include "core/dressing/film_sharing.h"

#include <algorithm>
#include <map>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/cutting/layout.h"
#include "core/dressing/cut.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

/// The engine's own domain; with more, the films keep a sheet each.
constexpr std::size_t most_films = 40;

/// One film that now takes a sheet of its own.
struct Film {
  FilmSheet* sheet = nullptr;
  const geometry::Polygon* outline = nullptr;
  Placement name;
};

supplies::StockList film_in_stock(const wound::Case& value) {
  supplies::StockList sheets = wound::stock_of(value);
  std::erase_if(sheets, [](const supplies::StockItem& item) {
    return item.kind != supplies::Kind::film_sheet;
  });
  return sheets;
}

bool border_is_enough(const Drape& drape) {
  return std::ranges::all_of(drape.border_stretches, [](const BorderStretch& stretch) {
    return stretch.kind == BorderKind::enough;
  });
}

class FilmSharer {
 public:
  FilmSharer(Plan& plan, const wound::Case& value, FindingList& findings, const Progress& progress)
      : plan_(plan),
        stock_(film_in_stock(value)),
        costs_given_(costs_are_given(stock_)),
        gap_cm_(value.dressing.piece_gap_cm),
        findings_(findings),
        progress_(progress) {}

  void share() {
    gather();
    if (films_.size() < 2 || films_.size() > most_films || !can_gain()) return;
    const cutting::Layout layout = cutting::lay_out(job(), {.rows_only = true}, progress_);
    if (is_better(layout)) enter(layout);
  }

 private:
  void gather() {
    int drapes = 0, protections = 0;
    for (Drape& drape : plan_.drapes) {
      ++drapes;
      if (drape.sheets.size() == 1 && drape.outline_cm.size() == 1 && border_is_enough(drape)) {
        films_.push_back(
            {&drape.sheets.front(),
             &drape.outline_cm.front(),
             {.use = PieceUse::film, .wound = drape.wounds.front(), .layer = 0, .piece = drapes}});
      }
      gather_protection(drape, protections);
    }
    for (const Film& film : films_) ++own_[film.sheet->item];
  }

  void gather_protection(Drape& drape, int& number) {
    std::vector<const geometry::Region*> bare;
    for (const Bridge& bridge : drape.bridges) {
      if (!bridge.skin_protection.empty()) bare.push_back(&bridge.skin_protection);
    }
    const bool one_each = bare.size() == drape.protection_sheets.size();
    for (std::size_t i = 0; i < drape.protection_sheets.size(); ++i) {
      ++number;
      if (!one_each || bare[i]->size() != 1) continue;
      films_.push_back({&drape.protection_sheets[i],
                        &bare[i]->front(),
                        {.use = PieceUse::skin_protection,
                         .wound = drape.wounds.front(),
                         .layer = 0,
                         .piece = number}});
    }
  }

  double cost_of(const supplies::StockItem& item) const {
    return costs_given_ ? *item.unit_cost : *item.length_cm * *item.width_cm;
  }

  double cost_of(const std::string& name) const {
    return cost_of(*std::ranges::find(stock_, name, &supplies::StockItem::item));
  }

  double cost_now() const {
    double cost = 0;
    for (const Film& film : films_) cost += cost_of(film.sheet->item);
    return cost;
  }

  /// Whether the area alone leaves anything to be gained.
  bool can_gain() const {
    double area_cm2 = 0, cheapest = 1e300;
    for (const Film& film : films_) area_cm2 += geometry::area(*film.outline);
    for (const supplies::StockItem& item : stock_) {
      cheapest = std::min(cheapest, cost_of(item) / (*item.length_cm * *item.width_cm));
    }
    return area_cm2 * cheapest <= cost_now() * (1 + 1e-9);
  }

  /// What the other films have taken from the shelf is gone.
  int taken_by_others(const std::string& item) const {
    int taken = 0;
    for (const Drape& drape : plan_.drapes) {
      for (const FilmSheet& sheet : drape.sheets) taken += sheet.item == item ? 1 : 0;
      for (const FilmSheet& sheet : drape.protection_sheets) taken += sheet.item == item ? 1 : 0;
    }
    const auto own = own_.find(item);
    return taken - (own == own_.end() ? 0 : own->second);
  }

  cutting::Job job() const {
    cutting::Job job{.gap_cm = gap_cm_,
                     .least_off_cut_cm = practice::limit("least_off_cut_cm").standard};
    for (const Film& film : films_) job.pieces.push_back(*film.outline);
    for (const supplies::StockItem& item : stock_) {
      std::optional<int> left;
      if (item.available) left = std::max(0, *item.available - taken_by_others(item.item));
      job.sheets.push_back({*item.length_cm, *item.width_cm, cost_of(item), left});
    }
    return job;
  }

  bool is_better(const cutting::Layout& layout) const {
    if (!layout.unplaced.empty()) return false;
    const double now = cost_now(), hair = 1e-9 * now;
    return layout.cost < now - hair ||
           (layout.cost <= now + hair && layout.sheets.size() < films_.size());
  }

  void enter(const cutting::Layout& layout) {
    const double before = cost_now();
    for (const cutting::CutSheet& sheet : layout.sheets) enter(sheet);
    report(layout, before);
  }

  void enter(const cutting::CutSheet& sheet) {
    const supplies::StockItem& item = stock_[static_cast<std::size_t>(sheet.kind)];
    CutSheet cut{.item = item.item,
                 .length_cm = sheet.length_cm,
                 .width_cm = sheet.width_cm,
                 .used_fraction = used_fraction(sheet),
                 .off_cut = off_cut_of(sheet)};
    const bool shared = sheet.placements.size() > 1;
    const int number = shared ? static_cast<int>(plan_.film_layout.size()) + 1 : 0;
    for (const cutting::Placement& placement : sheet.placements) {
      const Film& film = films_[static_cast<std::size_t>(placement.piece)];
      *film.sheet = {item.item, place_of(sheet, placement), number};
      Placement lies = film.name;
      lies.angle_deg = placement.angle_deg;
      lies.shift_cm = placement.shift_cm;
      lies.outline_cm = placement.outline_cm;
      cut.placements.push_back(std::move(lies));
    }
    if (shared) plan_.film_layout.push_back(std::move(cut));
  }

  /// Where the sheet lies over the patient when this film lies where it belongs.
  static geometry::Rectangle place_of(const cutting::CutSheet& sheet,
                                      const cutting::Placement& placement) {
    const geometry::Point middle{sheet.length_cm / 2, sheet.width_cm / 2};
    return {.centre = geometry::turned(middle - placement.shift_cm, -placement.angle_deg),
            .length_cm = sheet.length_cm,
            .width_cm = sheet.width_cm,
            .angle_deg = -placement.angle_deg};
  }

  void report(const cutting::Layout& layout, double before) {
    if (plan_.film_layout.empty()) return;
    const std::string films = count_of(static_cast<int>(films_.size()), "film", "films");
    const std::string sheets = count_of(static_cast<int>(layout.sheets.size()), "sheet", "sheets");
    const std::string text =
        costs_given_
            ? say("{1} of this dressing are cut from {2} (cost {3} instead of {4}): the cut layout "
                  "shows which lie on one.",
                  {films, sheets, format_number(layout.cost, 2), format_number(before, 2)})
            : say("{1} of this dressing are cut from {2}: the cut layout shows which lie on one.",
                  {films, sheets});
    findings_.add(
        {.severity = Severity::note,
         .code = "film-shared",
         .text = text + " " +
                 say("Trim along the drawn lines while the backing is on; a film cut this way has "
                     "no more border than was asked for."),
         .source = own_rule()});
  }

  Plan& plan_;
  supplies::StockList stock_;
  bool costs_given_;
  double gap_cm_;
  FindingList& findings_;
  const Progress& progress_;
  std::vector<Film> films_;
  std::map<std::string, int> own_;  ///< sheets that the films take now
};

}  // namespace

void share_film_sheets(Plan& plan, const wound::Case& value, FindingList& findings,
                       const Progress& progress) {
  FilmSharer(plan, value, findings, progress).share();
}

}  // namespace drapewright::dressing
