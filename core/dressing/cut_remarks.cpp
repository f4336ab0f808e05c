#include "core/dressing/cut_remarks.h"

#include <algorithm>
#include <limits>
#include <map>
#include <set>
#include <string>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/base/tolerances.h"
#include "core/dressing/filler_stock.h"
#include "core/geometry/measures.h"
#include "core/geometry/rectangle.h"

namespace drapewright::dressing {
namespace {

std::string in_words(const CutPiece& piece) {
  switch (piece.use) {
    case PieceUse::strip:
      return say("Strip {1}", {piece.piece});
    case PieceUse::bridge:
      return say("Bridge {1}", {piece.piece});
    case PieceUse::layer:
    case PieceUse::film:  // is never in a group of filler
    case PieceUse::skin_protection:
      break;
  }
  return say("Layer {1}, piece {2}", {piece.layer, piece.piece});
}

std::string size_of(const CutPiece& piece) {
  const auto box = geometry::smallest_enclosing_rectangle(piece.outline_cm.outer);
  return format_number(box.length_cm, 1) + " x " + format_number(box.width_cm, 1) + " cm";
}

void report_unknown_items(const wound::Case& value, FindingList& findings) {
  for (const std::string& name : unknown_filler_items(value)) {
    findings.add(
        {.severity = Severity::warning,
         .code = "filler-item-unknown",
         .text = say("The filler is to be cut from \"{1}\", but no such filler sheet is in stock. "
                     "It is passed over; choose the sheets again.",
                     {supplies::shown_name(name)}),
         .source = own_rule()});
  }
}

double smallest_part_cm2(const Cut& way, int piece) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t part = 0; part < way.split.piece_of.size(); ++part) {
    if (way.split.piece_of[part] != piece) continue;
    least = std::min(least, geometry::area(way.split.job.pieces[part]));
  }
  return least;
}

/// Of a piece in parts, with the middle of its first seam.
void report_splits(const CutGroup& group, const Cut& way, bool chosen_by_hand,
                   FindingList& findings) {
  for (std::size_t i = 0; i < group.pieces.size(); ++i) {
    const int number = static_cast<int>(i);
    const auto parts = std::ranges::count(way.split.piece_of, number);
    if (parts < 2) continue;
    const CutPiece& piece = group.pieces[i];
    const auto seam = std::ranges::find(way.split.seams, number, &cutting::Seam::piece);
    std::optional<geometry::Point> where;
    if (piece.use != PieceUse::strip && seam != way.split.seams.end()) {
      where = 0.5 * (seam->line_cm.from + seam->line_cm.to);
    }
    const std::vector<Insert> figures{in_words(piece), size_of(piece), static_cast<int>(parts),
                                      format_number(smallest_part_cm2(way, number), 1)};
    std::string text =
        (chosen_by_hand ? say("{1} ({2}) fits no sheet that was chosen and is cut into {3} parts "
                              "that lie edge "
                              "to edge, the smallest of {4} cm2.",
                              figures)
                        : say("{1} ({2}) fits no filler sheet in stock and is cut into {3} parts "
                              "that lie edge "
                              "to edge, the smallest of {4} cm2.",
                              figures)) +
        " " + say("Each is one more piece that can be left behind: count them in and out.");
    if (piece.use == PieceUse::strip) {
      text += " " + say("Parts of a strip can stay behind in the tunnel: get a longer sheet "
                        "instead.");
    }
    findings.add({.severity = Severity::warning,
                  .code = "piece-split",
                  .text = text,
                  .source = source_of_rule("fewest-pieces"),
                  .wound = piece.wound,
                  .where_cm = where});
  }
}

void report_thickness(const CutGroup& group, FindingList& findings) {
  if (group.sheets.empty()) return;
  std::map<double, int> thinned;  // by the thickness that was asked for
  for (const CutPiece& piece : group.pieces) {
    if (group.thickness_cm > piece.wanted_cm + tolerance::thinning_cm) ++thinned[piece.wanted_cm];
  }
  for (const auto& [wanted_cm, count] : thinned) {
    findings.add(
        {.severity = Severity::warning,
         .code = "sheet-thinned",
         .text = count_of(count,
                          "No filler sheet of {2} cm is at hand: {1} piece is cut from "
                          "the nearest, {3} cm thick, and thinned.",
                          "No filler sheet of {2} cm is at hand: {1} pieces are cut from "
                          "the nearest, {3} cm thick, and thinned.",
                          {format_short(wanted_cm, 2), format_short(group.thickness_cm, 2)}) +
                 " " +
                 say("What is cut away is waste, and loose crumbs: thin it well clear of "
                     "the wound."),
         .source = own_rule()});
  }
}

/// "Layer 1, piece 2 of wound 1; ...", the first few.
std::string names_of_missing(const CutGroup& group, const Cut& way) {
  constexpr std::size_t most = 4;
  std::string names;
  std::set<int> named;
  for (const int part : way.layout.unplaced) {
    const int number = way.split.piece_of[static_cast<std::size_t>(part)];
    if (!named.insert(number).second) continue;
    if (named.size() > most) return say("{1} and others", {names});
    const CutPiece& piece = group.pieces[static_cast<std::size_t>(number)];
    names += (names.empty() ? "" : "; ") + say("{1} of wound {2}", {in_words(piece), piece.wound});
  }
  return names;
}

void report_missing(const CutGroup& group, const Cut& way, FindingList& findings) {
  const auto missing = static_cast<int>(way.layout.unplaced.size());
  if (missing == 0) return;
  const std::string pieces = count_of(missing, "piece", "pieces");
  if (group.sheets.empty()) {
    findings.add(
        {.severity = Severity::warning,
         .code = "no-filler-sheet",
         .text = say("No filler sheet is in stock: {1} of filler cannot be cut, and the materials "
                     "list has no line for it.",
                     {pieces}),
         .source = own_rule()});
    return;
  }
  findings.add(
      {.severity = Severity::warning,
       .code = "filler-sheets-lacking",
       .text = say("The filler sheets of {1} cm in stock do not hold every piece: {2} found no "
                   "sheet ({3}). The materials list has the sheets for the others only.",
                   {format_short(group.thickness_cm, 2), pieces, names_of_missing(group, way)}),
       .source = own_rule()});
}

const SheetChoice* chosen_in(const SheetComparison& comparison) {
  const auto found = std::ranges::find(comparison.choices, true, &SheetChoice::chosen);
  return found == comparison.choices.end() ? nullptr : &*found;
}

std::string in_words(const SheetChoice& choice) {
  const std::string sheets = count_of(choice.sheets, "sheet", "sheets");
  const std::string pieces = count_of(choice.pieces, "piece", "pieces");
  if (!choice.cost) return say("{1} and {2}", {sheets, pieces});
  return say("{1} at {2} and {3}", {sheets, format_number(*choice.cost, 2), pieces});
}

/// What was chosen by hand, beside the cheapest of all stock.
void report_choice(const SheetComparison& comparison, FindingList& findings) {
  const SheetChoice* chosen = chosen_in(comparison);
  if (chosen == nullptr || chosen == &comparison.choices.front()) return;
  const SheetChoice& all = comparison.choices.front();
  findings.add(
      {.severity = Severity::note,
       .code = "sheets-chosen-by-hand",
       .text = say("The sheets of {1} cm were chosen by hand: {2} an application. From all stock "
                   "it would be {3}.",
                   {format_short(comparison.thickness_cm, 2), in_words(*chosen), in_words(all)}),
       .source = own_rule()});
}

}  // namespace

void remark_on_cut(const CutPlan& cut, const wound::Case& value, FindingList& findings) {
  report_unknown_items(value, findings);
  for (std::size_t i = 0; i < cut.groups.size(); ++i) {
    const CutGroup& group = cut.groups[i];
    const auto all = of_thickness(filler_in_stock(value), group.thickness_cm);
    const bool by_hand = group.sheets.size() < all.size();
    report_thickness(group, findings);
    report_splits(group, cut.ways[i], by_hand, findings);
    report_missing(group, cut.ways[i], findings);
    if (by_hand) report_choice(cut.comparison[i], findings);
  }
}

}  // namespace drapewright::dressing
