#include "core/report/cut_words.h"

#include <algorithm>
#include <cmath>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/report/plan_words.h"
#include "core/report/sketch.h"
#include "core/supplies/stock_item.h"

namespace drapewright::report {
namespace {

std::string numbered(dressing::PieceUse use, int number) {
  switch (use) {
    case dressing::PieceUse::strip:
      return say("Strip {1}", {number});
    case dressing::PieceUse::bridge:
      return say("Bridge {1}", {number});
    case dressing::PieceUse::film:
      return say("Film {1}", {number});
    case dressing::PieceUse::skin_protection:
      return say("Film under bridge {1}", {number});
    case dressing::PieceUse::layer:
      break;
  }
  return say("Piece {1}", {number});
}

std::string rounded_down(double length_cm) {
  return format_number(std::floor(10 * length_cm + 1e-6) / 10, 1);
}

}  // namespace

std::string placement_name(const dressing::Placement& placement, bool several_wounds) {
  if (placement.use == dressing::PieceUse::layer) {
    return piece_name(placement.wound, placement.layer, placement.piece, several_wounds);
  }
  const std::string name = numbered(placement.use, placement.piece);
  return placement.part > 0 ? say("{1}, part {2}", {name, placement.part}) : name;
}

std::string pieces_in_words(const dressing::CutSheet& sheet, bool several_wounds) {
  std::string names;
  for (const dressing::Placement& placement : sheet.placements) {
    names += (names.empty() ? "" : "; ") + placement_name(placement, several_wounds);
  }
  return names;
}

std::string offer_in_words(const dressing::SheetChoice& choice) {
  if (choice.items.size() == 1) return supplies::shown_name(choice.items.front());
  return say("Any of {1} sizes", {choice.items.size()});
}

std::string opened_in_words(const dressing::SheetChoice& choice) {
  std::string words;
  for (const auto& [item, sheets] : choice.opened) {
    words +=
        (words.empty() ? "" : " + ") + std::to_string(sheets) + " x " + supplies::shown_name(item);
  }
  return words.empty() ? say("none") : words;
}

std::string bound_in_words(const dressing::SheetChoice& choice) {
  if (choice.missing > 0) {
    return count_of(choice.missing, "{1} piece without a sheet", "{1} pieces without a sheet");
  }
  if (choice.best_possible) return say("best possible");
  if (choice.fewer_possible > 0) {
    return count_of(choice.fewer_possible, "at most {1} sheet fewer", "at most {1} sheets fewer");
  }
  if (choice.cheaper_possible) {
    return say("at most {1} less", {format_number(*choice.cheaper_possible, 2)});
  }
  return say("perhaps smaller sheets");
}

std::string off_cut_in_words(const geometry::Box& off_cut) {
  return rounded_down(off_cut.width()) + " x " + rounded_down(off_cut.height()) + " cm";
}

std::string off_cut_or_none(const dressing::SheetChoice& choice) {
  return choice.off_cut ? say("largest off-cut {1}", {off_cut_in_words(*choice.off_cut)})
                        : say("no off-cut");
}

ChoiceCells choice_titles() {
  const auto said = parted(say("Open|Sheets|Cost|Used|Pieces|Seams|Largest off-cut|Bound"));
  ChoiceCells titles;
  std::copy_n(said.begin(), std::min(said.size(), titles.size()), titles.begin());
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
