// Which sheets are opened: every piece of filler once, as it is in the wound, on sheets that are in
// stock, clear of its neighbours and the sheet's edge; and the materials list has them, too.

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <tuple>

#include "core/base/numbers.h"
#include "tests/support/plan_audit.h"

namespace drapewright::support {
namespace {

using dressing::CutSheet;
using dressing::PieceUse;
using dressing::Placement;

geometry::Polygon box_shape(geometry::Point low, geometry::Point high) {
  return {{low, {high.x, low.y}, high, {low.x, high.y}}, {}};
}

geometry::Ring moved(const geometry::Ring& ring, const Placement& by) {
  const double turn = by.angle_deg * geometry::pi / 180;
  geometry::Ring result;
  for (const geometry::Point p : ring) {
    result.push_back({p.x * std::cos(turn) - p.y * std::sin(turn) + by.shift_cm.x,
                      p.x * std::sin(turn) + p.y * std::cos(turn) + by.shift_cm.y});
  }
  return result;
}

geometry::Polygon moved(const geometry::Polygon& piece, const Placement& by) {
  geometry::Polygon result{moved(piece.outer, by), {}};
  for (const auto& hole : piece.holes) result.holes.push_back(moved(hole, by));
  return result;
}

class CutAuditor {
 public:
  explicit CutAuditor(Audit& audit)
      : audit_(audit),
        gap_cm_(audit.value.dressing.piece_gap_cm),
        stock_(wound::stock_of(audit.value)),
        chosen_(audit.value.dressing.filler_items),
        plan_(audit.plan) {}

  void audit() {
    gather();
    for (const CutSheet& sheet : plan_.cut_layout) check_sheet(sheet);
    check_all_are_cut();
    check_stock();
    check_choices();
  }

 private:
  using Name = std::tuple<PieceUse, std::string, int, int, int>;

  void expect(bool holds, const std::string& sentence) { audit_.expect(holds, sentence); }
  bool has_finding(const std::string& code) const { return audit_.has_finding({code}); }

  /// Every piece that is to be cut, by the name that its placement has to bear. Where a strip is
  /// cut in parts their outlines are not given in the plan: a placeholder without an outline.
  void gather() {
    for (const auto& layer : plan_.fill.layers) {
      int number = 0;
      for (const auto& piece : layer.pieces) {
        wanted_[{PieceUse::layer, layer.wound, layer.index, ++number, 0}] = piece;
      }
    }
    int number = 0;
    for (const auto& strip : plan_.fill.strips) {
      ++number;
      const geometry::Point half{strip.length_cm / 2, strip.width_cm / 2};
      if (strip.parts == 1) {
        wanted_[{PieceUse::strip, strip.wound, 0, number, 0}] = box_shape(-1.0 * half, half);
      }
      for (int part = 1; strip.parts > 1 && part <= strip.parts; ++part) {
        wanted_[{PieceUse::strip, strip.wound, 0, number, part}] = {};
      }
    }
    gather_bridges();
    expect(static_cast<int>(wanted_.size()) == plan_.fill.piece_count,
           "the pieces to be cut are not those that are counted");
  }

  void gather_bridges() {
    int number = 0;
    for (const auto& drape : plan_.drapes) {
      for (const auto& bridge : drape.bridges) {
        ++number;
        int part = 0;
        for (const auto& piece : bridge.strip) {
          const int named = bridge.strip.size() > 1 ? ++part : 0;
          wanted_[{PieceUse::bridge, drape.wounds.front(), 0, number, named}] = piece;
        }
      }
    }
  }

  void check_sheet(const CutSheet& sheet) {
    const GeosShape area(box_shape({}, {sheet.length_cm, sheet.width_cm}));
    const GeosShape room(
        box_shape({gap_cm_ - hair_cm, gap_cm_ - hair_cm},
                  {sheet.length_cm - gap_cm_ + hair_cm, sheet.width_cm - gap_cm_ + hair_cm}));
    std::vector<GeosShape> shapes;
    double cut_cm2 = 0;
    for (const Placement& placement : sheet.placements) {
      const GeosShape shape(placement.outline_cm);
      check_piece(placement, shape, sheet);
      expect(room.covers(shape), "a piece comes too near the edge of its sheet");
      for (const GeosShape& other : shapes) {
        expect(shape.distance(other) >= gap_cm_ - hair_cm && (shape & other).area() == 0,
               "pieces come too near each other on their sheet");
      }
      shapes.push_back(shape);
      cut_cm2 += shape.area();
    }
    expect(!shapes.empty(), "a sheet is opened for nothing");
    expect(std::fabs(sheet.used_fraction - cut_cm2 / area.area()) <= 1e-6, "the used fraction");
    if (!sheet.off_cut) return;
    const GeosShape left(box_shape(sheet.off_cut->low, sheet.off_cut->high));
    expect(area.buffered(hair_cm).covers(left), "the off-cut reaches beyond its sheet");
    for (const GeosShape& shape : shapes) {
      expect(shape.distance(left) >= gap_cm_ - hair_cm, "the off-cut comes too near a piece");
    }
  }

  void check_piece(const Placement& placement, const GeosShape& shape, const CutSheet& sheet) {
    const Name name{placement.use, placement.wound, placement.layer, placement.piece,
                    placement.part};
    expect(cut_.insert(name).second, "a piece is cut twice");
    const auto wanted = wanted_.find(name);
    expect(wanted != wanted_.end(), "a piece is cut that the plan does not have");
    if (wanted == wanted_.end()) return;
    check_thickness(placement, sheet);
    if (wanted->second.outer.empty()) return;  // a part of a strip
    // A strip is given by its size alone, so where its rectangle lies is the layout's own affair.
    if (placement.use == PieceUse::strip) {
      expect(std::fabs(shape.area() - GeosShape(wanted->second).area()) <= hair_cm,
             "a strip is cut to another size");
      return;
    }
    const GeosShape as_planned(moved(wanted->second, placement));
    const double off = (shape - as_planned).area() + (as_planned - shape).area();
    expect(off <= hair_cm * (1 + shape.edge_length()),
           "a piece is cut to another shape: off by " + format_number(off, 5) + " cm2");
  }

  void check_thickness(const Placement& placement, const CutSheet& sheet) {
    if (placement.use != PieceUse::layer) return;
    for (const auto& layer : plan_.fill.layers) {
      if (layer.wound != placement.wound || layer.index != placement.layer) continue;
      expect(std::fabs(layer.sheet_thickness_cm - sheet.thickness_cm) <= 1e-3,
             "a layer is cut from a sheet of another thickness");
      expect(layer.thickness_cm <= sheet.thickness_cm + 2e-3, "a layer is thicker than its sheet");
    }
  }

  void check_all_are_cut() {
    if (cut_.size() == wanted_.size()) return;
    expect(has_finding("no-filler-sheet") || has_finding("filler-sheets-lacking"),
           std::to_string(wanted_.size() - cut_.size()) +
               " pieces are not cut, and no finding says so");
  }

  void check_stock() {
    std::map<std::string, int> opened;
    for (const CutSheet& sheet : plan_.cut_layout) {
      ++opened[sheet.item];
      const auto item = std::ranges::find_if(stock_, [&](const supplies::StockItem& known) {
        return known.kind == supplies::Kind::filler_sheet && known.item == sheet.item &&
               known.length_cm == sheet.length_cm && known.width_cm == sheet.width_cm &&
               known.thickness_cm == sheet.thickness_cm;
      });
      expect(item != stock_.end(), sheet.item + " is cut, but is not in stock");
      if (item == stock_.end()) continue;
      expect(opened[sheet.item] <= item->available.value_or(opened[sheet.item]),
             sheet.item + ": more are cut than there are");
      expect(chosen_.empty() || has_finding("filler-item-unknown") ||
                 std::ranges::find(chosen_, sheet.item) != chosen_.end(),
             sheet.item + " is cut, but others were chosen");
    }
    for (const auto& line : plan_.consumables) {
      if (line.kind != supplies::Kind::filler_sheet) continue;
      expect(line.per_application == opened[line.item],
             line.item + ": the materials list has another number than the cut layout");
      opened.erase(line.item);
    }
    for (const auto& [item, sheets] : opened) {
      expect(sheets == 0, item + " is cut, but not on the materials list");
    }
  }

  void check_choices() {
    int sheets = 0, pieces = 0, missing = 0;
    for (const auto& comparison : plan_.sheet_comparison) {
      expect(comparison.choices.empty() ||
                 std::ranges::count(comparison.choices, true, &dressing::SheetChoice::chosen) == 1,
             "not exactly one way to cut is chosen");
      for (const auto& choice : comparison.choices) {
        if (!choice.chosen) continue;
        sheets += choice.sheets;
        pieces += choice.pieces;
        missing += choice.missing;
      }
    }
    expect(sheets == static_cast<int>(plan_.cut_layout.size()),
           "the comparison has another number of sheets than the cut layout");
    if (pieces == 0) return;  // nothing in stock: there is nothing to compare
    expect(missing == static_cast<int>(wanted_.size() - cut_.size()),
           "the comparison misses other pieces than the cut layout");
  }

  Audit& audit_;
  double gap_cm_;
  const supplies::StockList& stock_;
  const std::vector<std::string>& chosen_;
  const dressing::Plan& plan_;
  std::map<Name, geometry::Polygon> wanted_;
  std::set<Name> cut_;
};

}  // namespace

void audit_cut(Audit& audit) { CutAuditor(audit).audit(); }

}  // namespace drapewright::support
