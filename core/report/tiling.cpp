#include "core/report/tiling.h"

#include <algorithm>
#include <cmath>
#include <optional>

namespace drapewright::report {

using geometry::Box;
using geometry::Point;
using geometry::Segment;
using Points = std::vector<Point>;

namespace {

/// The part of a segment that lies in a box (Liang and Barsky, ACM Trans Graph 1984;3(1):1: each
/// side cuts off what lies beyond it).
std::optional<Segment> clipped(const Segment& segment, const Box& box) {
  const Point way = segment.to - segment.from;
  double enters = 0, leaves = 1;
  const auto cut = [&](double along, double room) {
    if (along == 0) return room >= 0;
    const double at = room / along;
    (along < 0 ? enters : leaves) = along < 0 ? std::max(enters, at) : std::min(leaves, at);
    return enters <= leaves;
  };
  if (!cut(-way.x, segment.from.x - box.low.x) || !cut(way.x, box.high.x - segment.from.x) ||
      !cut(-way.y, segment.from.y - box.low.y) || !cut(way.y, box.high.y - segment.from.y)) {
    return std::nullopt;
  }
  return Segment{enters > 0 ? segment.from + enters * way : segment.from,
                 leaves < 1 ? segment.from + leaves * way : segment.to};
}

int windows_for(double extent_mm, double window_mm) {
  const double step = window_mm - tile_overlap_mm;
  return std::max(1, static_cast<int>(std::ceil((extent_mm - tile_overlap_mm) / step - 1e-9)));
}

Box bounds(const std::vector<Points>& chains) {
  Points all;
  for (const Points& chain : chains) all.insert(all.end(), chain.begin(), chain.end());
  return geometry::bounding_box(all);
}

/// Two marks in the middle of the overlap, far enough apart to join tiles straight.
void add_marks(Tiling& tiling, std::size_t first, std::size_t second) {
  const Box &a = tiling.tiles[first].window, &b = tiling.tiles[second].window;
  const bool side_by_side = tiling.tiles[first].row == tiling.tiles[second].row;
  for (const double share : {0.2, 0.8}) {
    const Point at = side_by_side ? Point{0.5 * (a.high.x + b.low.x), a.low.y + share * a.height()}
                                  : Point{a.low.x + share * a.width(), 0.5 * (a.high.y + b.low.y)};
    tiling.marks.push_back({.number = static_cast<int>(tiling.marks.size()) + 1,
                            .at = at,
                            .first = static_cast<int>(first),
                            .second = static_cast<int>(second),
                            .side_by_side = side_by_side});
  }
}

void mark_neighbours(Tiling& tiling) {
  const auto& tiles = tiling.tiles;
  for (std::size_t i = 0; i < tiles.size(); ++i) {
    for (std::size_t j = i + 1; j < tiles.size(); ++j) {
      const int steps =
          std::abs(tiles[i].row - tiles[j].row) + std::abs(tiles[i].column - tiles[j].column);
      if (steps == 1) add_marks(tiling, i, j);
    }
  }
}

}  // namespace

std::vector<Points> clipped(const Points& chain, const Box& box) {
  std::vector<Points> parts;
  for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
    const auto inside = clipped(Segment{chain[i], chain[i + 1]}, box);
    if (!inside) continue;
    const bool goes_on =
        !parts.empty() && parts.back().back() == inside->from && i > 0 && inside->from == chain[i];
    if (!goes_on) parts.push_back({inside->from});
    parts.back().push_back(inside->to);
  }
  return parts;
}

Tiling tile(const std::vector<Points>& chains, const DrawingSize& window) {
  const Box whole = bounds(chains);
  Tiling tiling;
  tiling.columns = windows_for(whole.width(), window.width_mm);
  tiling.rows = windows_for(whole.height(), window.height_mm);
  const Point step{window.width_mm - tile_overlap_mm, window.height_mm - tile_overlap_mm};
  const Point covered{(tiling.columns - 1) * step.x + window.width_mm,
                      (tiling.rows - 1) * step.y + window.height_mm};
  const Point corner = 0.5 * (whole.low + whole.high) - 0.5 * covered;
  for (int row = 0; row < tiling.rows; ++row) {
    for (int column = 0; column < tiling.columns; ++column) {
      const Point low{corner.x + column * step.x, corner.y + row * step.y};
      const Box box{low, {low.x + window.width_mm, low.y + window.height_mm}};
      const bool drawn = std::ranges::any_of(
          chains, [&](const Points& chain) { return !clipped(chain, box).empty(); });
      if (drawn) tiling.tiles.push_back({column, row, box});
    }
  }
  mark_neighbours(tiling);
  return tiling;
}

}  // namespace drapewright::report
