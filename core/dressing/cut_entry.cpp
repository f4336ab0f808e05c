#include <algorithm>
#include <map>
#include <string>
#include <tuple>
#include <utility>

#include "core/dressing/cut_plan.h"
#include "core/dressing/fill.h"

namespace drapewright::dressing {
namespace {

/// The plan's bridges, numbered across all films from 1.
std::vector<Bridge*> bridges_of(Plan& plan) {
  std::vector<Bridge*> bridges;
  for (Drape& drape : plan.drapes) {
    for (Bridge& bridge : drape.bridges) bridges.push_back(&bridge);
  }
  return bridges;
}

/// Writes the parts of one group into the plan and says how each is called.
class PartWriter {
 public:
  PartWriter(const CutGroup& group, const Cut& way, Plan& plan)
      : group_(group), way_(way), plan_(plan) {}

  /// One placement without a place for each part.
  std::vector<Placement> write() {
    for (int part = 0; part < way_.parts(); ++part) ++parts_of_[key(source_of(part))];
    if (!way_.split.seams.empty()) write_back();
    for (Layer& layer : plan_.fill.layers) set_thickness(layer);
    return names();
  }

 private:
  /// What is numbered through: the pieces of a layer, the parts of a strip or a bridge.
  using Key = std::tuple<PieceUse, std::string, int>;
  static Key key(const CutPiece& piece) {
    return {piece.use, piece.wound, piece.use == PieceUse::layer ? piece.layer : piece.piece};
  }
  const CutPiece& source_of(int part) const {
    return group_
        .pieces[static_cast<std::size_t>(way_.split.piece_of[static_cast<std::size_t>(part)])];
  }

  std::vector<Placement> names() const {
    std::map<Key, int> numbers;
    std::vector<Placement> named;
    for (int part = 0; part < way_.parts(); ++part) {
      const CutPiece& source = source_of(part);
      const int number = ++numbers[key(source)];
      const bool in_layer = source.use == PieceUse::layer;
      const bool several = parts_of_.at(key(source)) > 1;
      named.push_back({.use = source.use,
                       .wound = source.wound,
                       .layer = source.layer,
                       .piece = in_layer ? number : source.piece,
                       .part = !in_layer && several ? number : 0});
    }
    return named;
  }

  bool holds(const Layer& layer) const {
    return parts_of_.contains({PieceUse::layer, layer.wound, layer.index});
  }

  void write_back() {
    for (Layer& layer : plan_.fill.layers) {
      if (holds(layer)) layer.pieces = parts_of({PieceUse::layer, layer.wound, layer.index});
    }
    const auto bridges = bridges_of(plan_);
    for (const auto& [name, count] : parts_of_) {
      const auto& [use, wound, number] = name;
      const auto index = static_cast<std::size_t>(number - 1);
      if (use == PieceUse::strip) plan_.fill.strips[index].parts = count;
      if (use == PieceUse::bridge) bridges[index]->strip = parts_of(name);
    }
    for (const cutting::Seam& seam : way_.split.seams) {
      const CutPiece& piece = group_.pieces[static_cast<std::size_t>(seam.piece)];
      if (piece.use == PieceUse::strip) continue;  // it lies nowhere in the drawing
      plan_.fill.seams.push_back({piece.wound, piece.layer, seam.line_cm});
    }
  }

  geometry::Region parts_of(const Key& wanted) const {
    geometry::Region parts;
    for (int part = 0; part < way_.parts(); ++part) {
      if (key(source_of(part)) != wanted) continue;
      parts.push_back(way_.split.job.pieces[static_cast<std::size_t>(part)]);
    }
    return parts;
  }

  void set_thickness(Layer& layer) const {
    if (!way_.sheets.empty() && holds(layer)) layer.sheet_thickness_cm = group_.thickness_cm;
  }

  const CutGroup& group_;
  const Cut& way_;
  Plan& plan_;
  std::map<Key, int> parts_of_;
};

CutSheet sheet_of(const cutting::CutSheet& sheet, const Cut& way,
                  const std::vector<Placement>& names) {
  const supplies::StockItem& item = way.sheets[static_cast<std::size_t>(sheet.kind)];
  CutSheet made{.item = item.item,
                .length_cm = sheet.length_cm,
                .width_cm = sheet.width_cm,
                .thickness_cm = *item.thickness_cm,
                .used_fraction = used_fraction(sheet),
                .off_cut = off_cut_of(sheet)};
  for (const cutting::Placement& lying : sheet.placements) {
    Placement placement = names[static_cast<std::size_t>(lying.piece)];
    placement.angle_deg = lying.angle_deg;
    placement.shift_cm = lying.shift_cm;
    placement.outline_cm = lying.outline_cm;
    made.placements.push_back(std::move(placement));
  }
  return made;
}

}  // namespace

void enter(const CutPlan& cut, Plan& plan) {
  for (std::size_t i = 0; i < cut.groups.size(); ++i) {
    const Cut& way = cut.ways[i];
    const std::vector<Placement> names = PartWriter(cut.groups[i], way, plan).write();
    for (const cutting::CutSheet& sheet : way.layout.sheets) {
      plan.cut_layout.push_back(sheet_of(sheet, way, names));
    }
  }
  plan.sheet_comparison = cut.comparison;
  sum_up(plan.fill);
  for (const Bridge* bridge : bridges_of(plan)) {
    plan.fill.piece_count += static_cast<int>(bridge->strip.size());
  }
}

}  // namespace drapewright::dressing
