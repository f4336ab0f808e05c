#include "core/dressing/cut.h"

#include <algorithm>
#include <cmath>
#include <tuple>
#include <utility>

#include "core/geometry/measures.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

using supplies::StockItem;

double area_of(const geometry::Box& box) { return box.width() * box.height(); }

cutting::Job job_of(const CutGroup& group, const Cut& way, double gap_cm) {
  cutting::Job job{.gap_cm = gap_cm,
                   .edge_gap_cm = gap_cm,
                   .least_off_cut_cm = practice::limit("least_off_cut_cm").standard};
  for (const CutPiece& piece : group.pieces) job.pieces.push_back(piece.outline_cm);
  for (const StockItem& item : way.sheets) {
    const double area_cm2 = *item.length_cm * *item.width_cm;
    job.sheets.push_back({.length_cm = *item.length_cm,
                          .width_cm = *item.width_cm,
                          .unit_cost = way.costs_given ? *item.unit_cost : area_cm2,
                          .available = item.available});
  }
  return job;
}

/// Nothing in stock: every piece is missing.
Cut cut_from_nothing(const CutGroup& group) {
  Cut none;
  for (const CutPiece& piece : group.pieces) {
    const int number = none.parts();
    none.split.piece_of.push_back(number);
    none.layout.unplaced.push_back(number);
    none.split.job.pieces.push_back(piece.outline_cm);
  }
  return none;
}

std::int64_t steps_with_first_layouts(std::int64_t steps, const cutting::Job& job) {
  const auto first = static_cast<std::int64_t>(job.pieces.size() * job.sheets.size());
  return steps + first;
}

auto rank(const Cut& way) {
  return std::tuple(way.layout.unplaced.size(), way.parts(), way.layout.cost,
                    way.layout.sheets.size(), -way.layout.off_cut_cm2);
}

/// The fewest sheets that a cost no lower than the bound can stand for.
int fewest_sheets(const Cut& way) {
  double dearest = 0;
  for (const auto& sheet : way.split.job.sheets) dearest = std::max(dearest, sheet.unit_cost);
  return std::max(1, static_cast<int>(std::ceil(way.layout.bound / dearest - 1e-9)));
}

double cut_area(const cutting::CutSheet& sheet) {
  double area_cm2 = 0;
  for (const auto& placement : sheet.placements) area_cm2 += geometry::area(placement.outline_cm);
  return area_cm2;
}

double used_fraction_of_all(const cutting::Layout& layout) {
  double pieces_cm2 = 0, sheets_cm2 = 0;
  for (const cutting::CutSheet& sheet : layout.sheets) {
    pieces_cm2 += cut_area(sheet);
    sheets_cm2 += sheet.length_cm * sheet.width_cm;
  }
  return sheets_cm2 > 0 ? pieces_cm2 / sheets_cm2 : 0;
}

void count_opened(const Cut& way, SheetChoice& choice) {
  for (std::size_t kind = 0; kind < way.sheets.size(); ++kind) {
    const auto sheets =
        std::ranges::count(way.layout.sheets, static_cast<int>(kind), &cutting::CutSheet::kind);
    choice.items.push_back(way.sheets[kind].item);
    if (sheets > 0) choice.opened.push_back({way.sheets[kind].item, static_cast<int>(sheets)});
  }
}

void add_bound(const Cut& way, SheetChoice& choice) {
  choice.best_possible = way.layout.proven_best() && choice.missing == 0;
  if (choice.best_possible || choice.sheets == 0) return;
  choice.fewer_possible = std::max(0, choice.sheets - fewest_sheets(way));
  if (way.costs_given) choice.cheaper_possible = way.layout.cost - way.layout.bound;
}

}  // namespace

Cut cut(const CutGroup& group, const supplies::StockList& sheets, double gap_cm,
        const cutting::Options& search, const Progress& progress) {
  if (sheets.empty()) return cut_from_nothing(group);
  Cut way{.sheets = sheets, .costs_given = costs_are_given(sheets)};
  const double least_part_cm = practice::limit("least_part_cm").standard;
  way.split = cutting::split_to_fit(job_of(group, way, gap_cm), least_part_cm, progress);
  way.layout = lay_out_again(way, search, progress);
  return way;
}

cutting::Layout lay_out_again(const Cut& way, cutting::Options search, const Progress& progress) {
  search.max_steps = steps_with_first_layouts(search.max_steps, way.split.job);
  return cutting::lay_out(way.split.job, search, progress);
}

bool is_better(const Cut& a, const Cut& b) { return rank(a) < rank(b); }

bool costs_are_given(const supplies::StockList& sheets) {
  const auto given = [](const StockItem& item) { return item.unit_cost.has_value(); };
  const auto something = [](const StockItem& item) { return item.unit_cost.value_or(0) > 0; };
  return std::ranges::all_of(sheets, given) && std::ranges::any_of(sheets, something);
}

double used_fraction(const cutting::CutSheet& sheet) {
  return cut_area(sheet) / (sheet.length_cm * sheet.width_cm);
}

std::optional<geometry::Box> off_cut_of(const cutting::CutSheet& sheet) {
  if (area_of(sheet.off_cut_cm) <= 0) return std::nullopt;
  return sheet.off_cut_cm;
}

SheetChoice summed_up(const Cut& way) {
  SheetChoice choice{.sheets = static_cast<int>(way.layout.sheets.size()),
                     .used_fraction = used_fraction_of_all(way.layout),
                     .pieces = way.parts(),
                     .seams = static_cast<int>(way.split.seams.size()),
                     .missing = static_cast<int>(way.layout.unplaced.size())};
  count_opened(way, choice);
  if (way.costs_given) choice.cost = way.layout.cost;
  for (const cutting::CutSheet& sheet : way.layout.sheets) {
    const auto left = off_cut_of(sheet);
    if (left && (!choice.off_cut || area_of(*left) > area_of(*choice.off_cut))) {
      choice.off_cut = left;
    }
  }
  add_bound(way, choice);
  return choice;
}

}  // namespace drapewright::dressing
