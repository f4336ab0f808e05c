#include "core/dressing/bridge.h"

#include <algorithm>
#include <queue>
#include <tuple>
#include <utility>

#include "core/base/disjoint_sets.h"
#include "core/base/tolerances.h"
#include "core/geometry/band.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"
#include "core/geometry/way.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

/// How far round the wounds a place for the port is looked for.
constexpr double search_cm = 40;

struct StripWay {
  geometry::Way way;
  bool crosses_no_port = false;
};

/// The shortest way that keeps clear of all zones, else one that crosses no_port zones only: where
/// a wound lies in such a zone itself no strip could leave it, though no port may sit there.
std::optional<StripWay> way_for_strip(const geometry::Region& from, const geometry::Region& to,
                                      const GroupGround& ground) {
  for (const bool may_cross : {false, true}) {
    if (may_cross && ground.skin.zones().no_port.empty()) break;
    const auto forbidden = ground.skin.closed_to_strips(ground.group, may_cross);
    if (!forbidden) return std::nullopt;
    if (auto way = geometry::shortest_way(from, to, *forbidden)) {
      return StripWay{std::move(*way), may_cross};
    }
  }
  return std::nullopt;
}

/// Everything within `by_cm` of the bridge's middle line and pad.
geometry::Region drawn(const Bridge& bridge, double by_cm, geometry::Chords chords,
                       double max_error_cm) {
  const auto within = [&](const std::vector<geometry::Point>& line, double width_cm) {
    return geometry::band(line, width_cm / 2 + by_cm, chords, max_error_cm);
  };
  geometry::Region strip = within(bridge.line, bridge.width_cm);
  if (bridge.pad_diameter_cm <= bridge.width_cm) return strip;
  return geometry::unite(strip, within({bridge.line.back()}, bridge.pad_diameter_cm));
}

/// What the round ends of a strip lose to chords, which lie inside so that it is nowhere wider than
/// asked for. A fifth of what a reach round it may err by.
constexpr double strip_sag_cm = tolerance::offset_cm / 5;

/// The polygons' outer edges become holes of a rectangle, their holes polygons of their own.
/// @pre all of `closed` lies inside the rectangle
geometry::Region complement(const geometry::Ring& rectangle, const geometry::Region& closed) {
  geometry::Region open = {{rectangle, {}}};
  for (const geometry::Polygon& polygon : closed) {
    open.front().holes.emplace_back(polygon.outer.rbegin(), polygon.outer.rend());
    for (const geometry::Ring& hole : polygon.holes) {
      open.push_back({{hole.rbegin(), hole.rend()}, {}});
    }
  }
  return open;
}

/// Where the middle of the port may lie: its base and its pad clear of the zones, its pad wholly on
/// skin.
std::optional<geometry::Region> places_for_port(const GroupGround& ground) {
  const geometry::Region* closed = ground.skin.closed_to_ports();
  if (closed == nullptr) return std::nullopt;
  const geometry::Box box = geometry::bounding_box(geometry::outer_points(ground.shape));
  const geometry::Box most = geometry::bounding_box(geometry::outer_points(*closed));
  const geometry::Box all{{box.low.x - search_cm, box.low.y - search_cm},
                          {box.high.x + search_cm, box.high.y + search_cm}};
  const geometry::Ring edge =
      geometry::rectangle(all.width(), all.height(), 0.5 * (all.low + all.high));
  const bool inside = most.low.x > all.low.x && most.low.y > all.low.y &&
                      most.high.x < all.high.x && most.high.y < all.high.y;
  return inside ? complement(edge, *closed) : geometry::subtract({{edge, {}}}, *closed);
}

Bridge bridge_along(StripWay found, const wound::DressingSettings& settings) {
  Bridge bridge;
  bridge.line = std::move(found.way.points);
  bridge.length_cm = found.way.length_cm;
  bridge.crosses_no_port = found.crosses_no_port;
  bridge.width_cm = settings.bridge_width_cm;
  return bridge;
}

/// Draws the strip and the film under it: on skin, and where film may lie.
void draw(Bridge& bridge, const GroupGround& ground) {
  bridge.strip = drawn(bridge, 0, geometry::Chords::inside, strip_sag_cm);
  const double margin_cm = practice::limit("skin_protection_margin_cm").standard;
  bridge.skin_protection =
      geometry::subtract(reach_of(bridge, margin_cm), ground.skin.closed_to_film());
}

/// Pairs of pieces that do not belong together yet, by their straight gap: what Kruskal's tree asks
/// for. A gap is measured only when its pair's boxes make it the next candidate.
class PairsByGap {
 public:
  explicit PairsByGap(const std::vector<geometry::Region>& pieces) : pieces_(pieces) {
    std::vector<geometry::Box> boxes;
    for (const geometry::Region& piece : pieces) {
      boxes.push_back(geometry::bounding_box(geometry::outer_points(piece)));
    }
    for (std::size_t i = 0; i < pieces.size(); ++i) {
      for (std::size_t j = i + 1; j < pieces.size(); ++j) {
        open_.push({geometry::gap_between(boxes[i], boxes[j]), i, j, false});
      }
    }
  }

  std::optional<std::pair<std::size_t, std::size_t>> next(DisjointSets& sets) {
    while (!open_.empty()) {
      auto [gap_cm, i, j, measured] = open_.top();
      open_.pop();
      if (sets.together(i, j)) continue;
      if (measured) return std::pair{i, j};
      gap_cm = geometry::gap_between_edges(pieces_[i], pieces_[j]).distance_cm;
      open_.push({gap_cm, i, j, true});
    }
    return std::nullopt;
  }

 private:
  using Pair = std::tuple<double, std::size_t, std::size_t, bool>;
  const std::vector<geometry::Region>& pieces_;
  std::priority_queue<Pair, std::vector<Pair>, std::greater<>> open_;
};

}  // namespace

geometry::Region reach_of(const Bridge& bridge, double by_cm) {
  // Farther by a grid step, as an overlay may move the edge by that.
  return drawn(bridge, by_cm + tolerance::grid_cm, geometry::Chords::outside,
               tolerance::offset_cm - strip_sag_cm - 2 * tolerance::grid_cm);
}

std::optional<Bridge> bridge_to_port(const geometry::Region& filler, const GroupGround& ground,
                                     const wound::DressingSettings& settings) {
  const auto places = places_for_port(ground);
  if (!places || places->empty() || filler.empty()) return std::nullopt;
  auto way = way_for_strip(filler, *places, ground);
  if (!way) return std::nullopt;
  Bridge bridge = bridge_along(std::move(*way), settings);
  bridge.pad_diameter_cm = pad_diameter(settings);
  draw(bridge, ground);
  return bridge;
}

JoinedFiller join_filler(const std::vector<geometry::Region>& pieces, const GroupGround& ground,
                         const wound::DressingSettings& settings) {
  JoinedFiller joined;
  DisjointSets sets(pieces.size());
  PairsByGap pairs(pieces);
  while (const auto pair = pairs.next(sets)) {
    const auto [i, j] = *pair;
    auto way = way_for_strip(pieces[i], pieces[j], ground);
    if (!way) continue;
    sets.join(i, j);
    Bridge bridge = bridge_along(std::move(*way), settings);
    draw(bridge, ground);
    joined.bridges.push_back(std::move(bridge));
  }
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    if (!sets.together(i, 0)) joined.barred.push_back(i);
  }
  return joined;
}

}  // namespace drapewright::dressing
