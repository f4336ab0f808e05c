#include "core/report/cut_words.h"

#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/sketch.h"

namespace drapewright::report {
namespace {

std::string noun_of(dressing::PieceUse use) {
  switch (use) {
    case dressing::PieceUse::strip:
      return "Strip";
    case dressing::PieceUse::bridge:
      return "Bridge";
    case dressing::PieceUse::film:
      return "Film";
    case dressing::PieceUse::skin_protection:
      return "Film under bridge";
    case dressing::PieceUse::layer:
      break;
  }
  return "Piece";
}

std::string rounded_down(double length_cm) {
  return format_number(std::floor(10 * length_cm + 1e-6) / 10, 1);
}

}  // namespace

std::string placement_name(const dressing::Placement& placement, bool several_wounds) {
  if (placement.use == dressing::PieceUse::layer) {
    return piece_name(placement.wound, placement.layer, placement.piece, several_wounds);
  }
  std::string name = noun_of(placement.use) + " " + std::to_string(placement.piece);
  if (placement.part > 0) name += ", part " + std::to_string(placement.part);
  return name;
}

std::string pieces_in_words(const dressing::CutSheet& sheet, bool several_wounds) {
  std::string names;
  for (const dressing::Placement& placement : sheet.placements) {
    names += (names.empty() ? "" : "; ") + placement_name(placement, several_wounds);
  }
  return names;
}

std::string offer_in_words(const dressing::SheetChoice& choice) {
  if (choice.items.size() == 1) return choice.items.front();
  return "Any of " + std::to_string(choice.items.size()) + " sizes";
}

std::string opened_in_words(const dressing::SheetChoice& choice) {
  std::string words;
  for (const auto& [item, sheets] : choice.opened) {
    words += (words.empty() ? "" : " + ") + std::to_string(sheets) + " x " + item;
  }
  return words.empty() ? "none" : words;
}

std::string bound_in_words(const dressing::SheetChoice& choice) {
  if (choice.missing > 0) return count_of(choice.missing, "piece", "pieces") + " without a sheet";
  if (choice.best_possible) return "best possible";
  if (choice.fewer_possible > 0) {
    return "at most " + count_of(choice.fewer_possible, "sheet", "sheets") + " fewer";
  }
  if (choice.cheaper_possible) {
    return "at most " + format_number(*choice.cheaper_possible, 2) + " less";
  }
  return "perhaps smaller sheets";
}

std::string off_cut_in_words(const geometry::Box& off_cut) {
  return rounded_down(off_cut.width()) + " x " + rounded_down(off_cut.height()) + " cm";
}

std::string off_cut_or_none(const dressing::SheetChoice& choice) {
  return choice.off_cut ? "largest off-cut " + off_cut_in_words(*choice.off_cut) : "no off-cut";
}

const ChoiceCells& choice_titles() {
  static const ChoiceCells titles{"Open",  "Sheets",          "Cost", "Used", "Pieces",
                                  "Seams", "Largest off-cut", "Bound"};
  return titles;
}

ChoiceCells cells_of(const dressing::SheetChoice& choice) {
  return {offer_in_words(choice),
          std::to_string(choice.sheets),
          choice.cost ? format_number(*choice.cost, 2) : "-",
          format_number(100 * choice.used_fraction, 0) + " %",
          std::to_string(choice.pieces),
          std::to_string(choice.seams),
          choice.off_cut ? off_cut_in_words(*choice.off_cut) : "-",
          bound_in_words(choice)};
}

}  // namespace drapewright::report
