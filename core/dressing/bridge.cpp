#include "core/dressing/bridge.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "core/base/disjoint_sets.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"
#include "core/geometry/way.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

/// How far round the wounds a place for the port is looked for.
constexpr double search_cm = 40;

std::optional<geometry::Region> grown(const geometry::Region& region, double by_cm) {
  if (region.empty()) return region;
  geometry::Offset offset = geometry::outset(region, by_cm);
  if (!offset.verified) return std::nullopt;
  return std::move(offset.region);
}

/// What the middle line of a strip must keep out of. Where a wound lies in a no_port zone itself,
/// no strip could leave it: then such zones may be crossed, though no port may sit in them.
std::optional<geometry::Region> forbidden_to_strip(const BridgeGround& ground, double width_cm,
                                                   bool may_cross_no_port) {
  std::vector<geometry::Region> parts = {ground.no_film,
                                         geometry::subtract(ground.all_wounds, ground.group)};
  if (!may_cross_no_port) parts.push_back(ground.no_port);
  return grown(geometry::unite(parts), width_cm / 2);
}

struct StripWay {
  geometry::Way way;
  bool crosses_no_port = false;
};

/// The shortest way that keeps clear of all zones, else one that crosses no_port zones only.
std::optional<StripWay> way_for_strip(const geometry::Region& from, const geometry::Region& to,
                                      const BridgeGround& ground, double width_cm) {
  for (const bool may_cross : {false, true}) {
    if (may_cross && ground.no_port.empty()) break;
    const auto forbidden = forbidden_to_strip(ground, width_cm, may_cross);
    if (!forbidden) return std::nullopt;
    if (auto way = geometry::shortest_way(from, to, *forbidden)) {
      return StripWay{std::move(*way), may_cross};
    }
  }
  return std::nullopt;
}

/// The strip's outline: everything within half its width of its middle line.
geometry::Region strip_along(const std::vector<geometry::Point>& line, double width_cm) {
  std::vector<geometry::Region> parts;
  for (std::size_t i = 0; i < line.size(); ++i) {
    parts.push_back({{geometry::circle(width_cm, line[i], 72), {}}});
    if (i == 0) continue;
    const double length_cm = geometry::distance(line[i - 1], line[i]);
    if (length_cm == 0) continue;
    parts.push_back({{geometry::rectangle(length_cm, width_cm, 0.5 * (line[i - 1] + line[i]),
                                          geometry::direction_deg(line[i - 1], line[i])),
                      {}}});
  }
  return geometry::unite(parts);
}

double pad_diameter(const wound::DressingSettings& settings) {
  const double margin_cm = practice::limit("pad_margin_cm").standard;
  return std::max(settings.bridge_width_cm, settings.aperture_diameter_cm + 2 * margin_cm);
}

/// Where the middle of the port may lie: its base clear of the zones, its pad wholly on skin.
std::optional<geometry::Region> places_for_port(const BridgeGround& ground,
                                                const wound::DressingSettings& settings) {
  const auto zones =
      grown(geometry::unite(ground.no_film, ground.no_port), settings.port_base_diameter_cm / 2);
  const auto wounds = grown(ground.all_wounds, pad_diameter(settings) / 2);
  if (!zones || !wounds) return std::nullopt;
  const geometry::Box box = geometry::bounding_box(geometry::outer_points(ground.group));
  const geometry::Point middle = 0.5 * (box.low + box.high);
  const geometry::Region all = {
      {geometry::rectangle(box.width() + 2 * search_cm, box.height() + 2 * search_cm, middle), {}}};
  return geometry::subtract(geometry::subtract(all, *zones), *wounds);
}

Bridge bridge_along(StripWay found, const wound::DressingSettings& settings) {
  Bridge bridge;
  bridge.line = std::move(found.way.points);
  bridge.length_cm = found.way.length_cm;
  bridge.crosses_no_port = found.crosses_no_port;
  bridge.width_cm = settings.bridge_width_cm;
  bridge.strip = strip_along(bridge.line, bridge.width_cm);
  return bridge;
}

void protect_skin(Bridge& bridge, const BridgeGround& ground) {
  const double margin_cm = practice::limit("skin_protection_margin_cm").standard;
  const auto under = grown(bridge.strip, margin_cm);
  bridge.skin_protection = geometry::subtract(under ? *under : bridge.strip, ground.group);
}

}  // namespace

std::optional<Bridge> bridge_to_port(const geometry::Region& filler, const BridgeGround& ground,
                                     const wound::DressingSettings& settings) {
  const auto places = places_for_port(ground, settings);
  if (!places || places->empty() || filler.empty()) return std::nullopt;
  auto way = way_for_strip(filler, *places, ground, settings.bridge_width_cm);
  if (!way) return std::nullopt;
  Bridge bridge = bridge_along(std::move(*way), settings);
  bridge.pad_diameter_cm = pad_diameter(settings);
  bridge.strip = geometry::unite(
      bridge.strip, {{geometry::circle(bridge.pad_diameter_cm, bridge.line.back(), 72), {}}});
  protect_skin(bridge, ground);
  return bridge;
}

JoinedFiller join_filler(const geometry::Region& pieces, const BridgeGround& ground,
                         const wound::DressingSettings& settings) {
  JoinedFiller joined;
  // Kruskal's tree by the straight gap; only the pairs that it asks for get a way of their own.
  std::vector<std::tuple<double, std::size_t, std::size_t>> gaps;
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    for (std::size_t j = i + 1; j < pieces.size(); ++j) {
      gaps.emplace_back(geometry::gap_between_edges({pieces[i]}, {pieces[j]}).distance_cm, i, j);
    }
  }
  std::ranges::sort(gaps);
  DisjointSets sets(pieces.size());
  for (const auto& [gap_cm, i, j] : gaps) {
    if (sets.together(i, j)) continue;
    auto way = way_for_strip({pieces[i]}, {pieces[j]}, ground, settings.bridge_width_cm);
    if (!way) continue;
    sets.join(i, j);
    Bridge bridge = bridge_along(std::move(*way), settings);
    protect_skin(bridge, ground);
    joined.bridges.push_back(std::move(bridge));
  }
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!sets.together(i, 0)) joined.barred.push_back(i);
  }
  return joined;
}

}  // namespace drapewright::dressing
