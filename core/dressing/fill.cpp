#include "core/dressing/fill.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "core/base/say.h"
#include "core/base/tolerances.h"
#include "core/dressing/fill_remarks.h"
#include "core/dressing/wound_filler.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

/// The part of the wound that is farther than `reach_cm` from the pieces.
/// @returns nothing when the offset could not be verified
std::optional<geometry::Region> beyond(const geometry::Region& shape,
                                       const geometry::Region& pieces, double reach_cm) {
  if (pieces.empty()) return shape;
  const geometry::Offset reached = geometry::outset(pieces, reach_cm);
  if (!reached.verified) return std::nullopt;
  return geometry::subtract(shape, reached.region);
}

/// The wound's area that its top layer leaves out. Where the wall is straight and there are no
/// pockets the map knows it already; else it is what the pieces themselves do not reach.
std::optional<geometry::Region> left_out(const PreparedWound& wound,
                                         const std::vector<Layer>& layers, double inset_cm) {
  if (layers.empty()) return wound.shape;
  const Layer& top = layers.front();
  const bool plain = top.inset_cm == inset_cm && inset_cm > 0 && !top.reaches_into_pockets;
  if (!plain || !wound.map->sound()) {
    return beyond(wound.shape, top.pieces, inset_cm + tolerance::unfilled_band_cm);
  }
  geometry::Region all;
  for (geometry::Arm& arm : wound.map->unreached(inset_cm).arms) {
    std::ranges::move(arm.region, std::back_inserter(all));
  }
  return all;
}

void add_unfilled(const PreparedWound& wound, const std::vector<Layer>& layers, double inset_cm,
                  Fill& fill, FindingList& findings) {
  const auto unfilled = left_out(wound, layers, inset_cm);
  if (!unfilled) {
    findings.add(
        {.severity = Severity::warning,
         .code = "unfilled-not-verified",
         .text = say("How much of the wound takes no filler could not be worked out safely."),
         .source = own_rule(),
         .wound = wound.wound->id});
    return;
  }
  fill.unfilled_cm2 += geometry::area(*unfilled);
  std::ranges::copy(*unfilled, std::back_inserter(fill.unfilled));
  if (layers.empty()) return;
  // Under a sloping wall the cut keeps away from the edge by more than the inset all round; only
  // what lies beyond that is an arm.
  const double own_inset_cm = layers.front().inset_cm;
  const auto arms = own_inset_cm > inset_cm ? beyond(wound.shape, layers.front().pieces,
                                                     own_inset_cm + tolerance::unfilled_band_cm)
                                            : unfilled;
  if (arms) remark_on_arms(*wound.wound, *arms, own_inset_cm, findings);
}

void add_strips(const wound::Wound& wound, Fill& fill) {
  for (const wound::Tunnel& tunnel : wound.tunnels) {
    if (!tunnel.explored) continue;
    fill.strips.push_back(
        {.wound = wound.id,
         .clock = tunnel.clock,
         .length_cm = tunnel.length_cm + practice::limit("tunnel_tail_cm").standard,
         .width_cm = practice::limit("tunnel_strip_width_cm").standard});
  }
}

}  // namespace

Fill fill_wounds(const std::vector<PreparedWound>& wounds, const wound::Case& value,
                 FindingList& findings, const Progress& progress) {
  Fill fill;
  for (const PreparedWound& wound : wounds) {
    progress.at(0.2 + 0.3 * static_cast<double>(&wound - wounds.data()) /
                          static_cast<double>(wounds.size()));
    std::vector<Layer> layers = fill_wound(wound, value, findings);
    add_unfilled(wound, layers, value.dressing.inset_cm, fill, findings);
    remark_on_layers(wound, layers, findings);
    add_strips(*wound.wound, fill);
    std::ranges::move(layers, std::back_inserter(fill.layers));
  }
  sum_up(fill);
  return fill;
}

namespace {

/// A layer's pieces as they lie: parts that were cut to fit sheets lie edge to edge and are one
/// again. Their edges may be a grid spacing apart, so the seam is bridged by a hair's breadth.
geometry::Region as_they_lie(const Layer& layer, const std::vector<Seam>& seams) {
  std::vector<geometry::Region> parts{layer.pieces};
  for (const Seam& seam : seams) {
    if (seam.wound != layer.wound || seam.layer != layer.index) continue;
    const geometry::Point along = seam.line.to - seam.line.from;
    parts.push_back({{geometry::rectangle(geometry::norm(along), 4 * tolerance::grid_cm,
                                          0.5 * (seam.line.from + seam.line.to),
                                          geometry::degrees(std::atan2(along.y, along.x))),
                      {}}});
  }
  return parts.size() == 1 ? layer.pieces : geometry::unite(parts);
}

}  // namespace

std::vector<geometry::Region> top_pieces(const Fill& fill, const std::vector<PreparedWound>& wounds,
                                         const std::vector<std::string>& ids) {
  std::vector<geometry::Region> top;
  for (const Layer& layer : fill.layers) {
    if (layer.index != 1 || std::ranges::find(ids, layer.wound) == ids.end()) continue;
    const auto wound =
        std::ranges::find(wounds, layer.wound, [](const PreparedWound& w) { return w.wound->id; });
    for (const geometry::Polygon& piece : as_they_lie(layer, fill.seams)) {
      geometry::Region seen = {piece};
      if (layer.reaches_into_pockets) seen = geometry::intersect(seen, wound->shape);
      if (!seen.empty()) top.push_back(std::move(seen));
    }
  }
  return top;
}

void sum_up(Fill& fill) {
  fill.piece_count = 0;
  fill.area_cm2 = fill.volume_cm3 = fill.top_area_cm2 = 0;
  for (const TunnelStrip& strip : fill.strips) fill.piece_count += strip.parts;
  for (const Layer& layer : fill.layers) {
    const double area_cm2 = geometry::area(layer.pieces);
    fill.piece_count += static_cast<int>(layer.pieces.size());
    fill.area_cm2 += area_cm2;
    fill.volume_cm3 += area_cm2 * layer.thickness_cm;
    if (layer.index == 1) fill.top_area_cm2 += area_cm2;
  }
}

geometry::Region top_filler(const Fill& fill, const std::vector<PreparedWound>& wounds,
                            const std::vector<std::string>& ids) {
  geometry::Region top;
  for (geometry::Region& piece : top_pieces(fill, wounds, ids)) {
    std::ranges::move(piece, std::back_inserter(top));
  }
  return top;
}

}  // namespace drapewright::dressing
