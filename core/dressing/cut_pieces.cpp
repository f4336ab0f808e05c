#include "core/dressing/cut_pieces.h"

#include <algorithm>
#include <functional>
#include <map>
#include <utility>

#include "core/dressing/filler_stock.h"
#include "core/geometry/shapes.h"

namespace drapewright::dressing {
namespace {

double thinnest_sheet(const Fill& fill, double standard_cm) {
  double thinnest = standard_cm;
  for (const Layer& layer : fill.layers) thinnest = std::min(thinnest, layer.sheet_thickness_cm);
  return thinnest;
}

void add_layers(const Fill& fill, std::vector<CutPiece>& pieces) {
  for (const Layer& layer : fill.layers) {
    int number = 0;
    for (const geometry::Polygon& piece : layer.pieces) {
      pieces.push_back({.wound = layer.wound,
                        .layer = layer.index,
                        .piece = ++number,
                        .wanted_cm = layer.sheet_thickness_cm,
                        .outline_cm = piece});
    }
  }
}

void add_strips(const Fill& fill, double wanted_cm, std::vector<CutPiece>& pieces) {
  int number = 0;
  for (const TunnelStrip& strip : fill.strips) {
    pieces.push_back({.use = PieceUse::strip,
                      .wound = strip.wound,
                      .piece = ++number,
                      .wanted_cm = wanted_cm,
                      .outline_cm = {geometry::rectangle(strip.length_cm, strip.width_cm), {}}});
  }
}

void add_bridges(const std::vector<Drape>& drapes, double wanted_cm,
                 std::vector<CutPiece>& pieces) {
  int number = 0;
  for (const Drape& drape : drapes) {
    for (const Bridge& bridge : drape.bridges) {
      ++number;
      for (const geometry::Polygon& part : bridge.strip) {
        pieces.push_back({.use = PieceUse::bridge,
                          .wound = drape.wounds.front(),
                          .piece = number,
                          .wanted_cm = wanted_cm,
                          .outline_cm = part});
      }
    }
  }
}

}  // namespace

std::vector<CutGroup> cut_groups(const Plan& plan, const wound::Case& value) {
  const double thinnest_cm = thinnest_sheet(plan.fill, value.dressing.filler_thickness_cm);
  std::vector<CutPiece> pieces;
  add_layers(plan.fill, pieces);
  add_strips(plan.fill, thinnest_cm, pieces);
  add_bridges(plan.drapes, thinnest_cm, pieces);
  const supplies::StockList stock = filler_to_cut_from(value);
  std::map<double, CutGroup, std::greater<>> groups;
  for (CutPiece& piece : pieces) {
    const double thickness_cm =
        stock.empty() ? piece.wanted_cm : nearest_thickness(stock, piece.wanted_cm);
    CutGroup& group = groups[thickness_cm];
    if (group.pieces.empty()) group = {thickness_cm, {}, of_thickness(stock, thickness_cm)};
    group.pieces.push_back(std::move(piece));
  }
  std::vector<CutGroup> thickest_first;
  for (auto& [_, group] : groups) thickest_first.push_back(std::move(group));
  return thickest_first;
}

}  // namespace drapewright::dressing
