#include "core/cutting/verify.h"

#include <algorithm>
#include <cmath>
#include <cstdint>

#include "core/base/numbers.h"
#include "core/base/tolerances.h"
#include "core/cutting/turn.h"
#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"

namespace drapewright::cutting {
namespace {

using Fault = std::optional<std::string>;
__extension__ using Wide = __int128;  // products of two areas in grid units

struct GridPoint {
  std::int64_t x = 0;
  std::int64_t y = 0;
};
struct GridEdge {
  GridPoint from;
  GridPoint to;
};

std::int64_t on_grid(double cm) { return std::llround(cm / tolerance::grid_cm); }

/// A placed outline in grid units, all rings' edges in one list.
struct GridPiece {
  int piece = 0;
  std::vector<GridEdge> edges;
  GridPoint low, high;
};

GridPiece grid_piece(const Placement& placement) {
  GridPiece result{placement.piece, {}, {}, {}};
  auto add = [&](const geometry::Ring& ring) {
    for (std::size_t k = 0; k < ring.size(); ++k) {
      const auto &p = ring[k], &q = ring[(k + 1) % ring.size()];
      result.edges.push_back({{on_grid(p.x), on_grid(p.y)}, {on_grid(q.x), on_grid(q.y)}});
    }
  };
  add(placement.outline_cm.outer);
  for (const auto& hole : placement.outline_cm.holes) add(hole);
  result.low = result.high = result.edges.front().from;
  for (const auto& edge : result.edges) {
    result.low = {std::min(result.low.x, edge.from.x), std::min(result.low.y, edge.from.y)};
    result.high = {std::max(result.high.x, edge.from.x), std::max(result.high.y, edge.from.y)};
  }
  return result;
}

Wide cross(GridPoint o, GridPoint a, GridPoint b) {
  return Wide(a.x - o.x) * (b.y - o.y) - Wide(a.y - o.y) * (b.x - o.x);
}
Wide squared(GridPoint a, GridPoint b) {
  return Wide(a.x - b.x) * (a.x - b.x) + Wide(a.y - b.y) * (a.y - b.y);
}

bool point_near(const GridEdge& edge, GridPoint p, Wide least_squared) {
  const Wide along = Wide(p.x - edge.from.x) * (edge.to.x - edge.from.x) +
                     Wide(p.y - edge.from.y) * (edge.to.y - edge.from.y);
  const Wide length = squared(edge.from, edge.to);
  if (along <= 0) return squared(edge.from, p) < least_squared;
  if (along >= length) return squared(edge.to, p) < least_squared;
  const Wide area = cross(edge.from, edge.to, p);
  // area^2 < least^2 length: area fits 55 bits for shapes of up to 100 m.
  return area * area < least_squared * length;
}

bool cross_properly(const GridEdge& a, const GridEdge& b) {
  auto sign = [](Wide v) { return v > 0 ? 1 : v < 0 ? -1 : 0; };
  return sign(cross(a.from, a.to, b.from)) * sign(cross(a.from, a.to, b.to)) < 0 &&
         sign(cross(b.from, b.to, a.from)) * sign(cross(b.from, b.to, a.to)) < 0;
}

bool edges_near(const GridEdge& a, const GridEdge& b, std::int64_t least) {
  if (std::max(a.from.x, a.to.x) + least <= std::min(b.from.x, b.to.x) ||
      std::max(b.from.x, b.to.x) + least <= std::min(a.from.x, a.to.x) ||
      std::max(a.from.y, a.to.y) + least <= std::min(b.from.y, b.to.y) ||
      std::max(b.from.y, b.to.y) + least <= std::min(a.from.y, a.to.y)) {
    return false;
  }
  const Wide squared_least = Wide(least) * least;
  return cross_properly(a, b) || point_near(a, b.from, squared_least) ||
         point_near(a, b.to, squared_least) || point_near(b, a.from, squared_least) ||
         point_near(b, a.to, squared_least);
}

/// Even-odd over outer ring and holes. For points that lie on no edge.
bool inside(const GridPiece& piece, GridPoint p) {
  bool odd = false;
  for (const auto& edge : piece.edges) {
    if ((edge.from.y > p.y) == (edge.to.y > p.y)) continue;
    const Wide side = cross(edge.from, edge.to, p);
    if (edge.to.y > edge.from.y ? side > 0 : side < 0) odd = !odd;
  }
  return odd;
}

bool overlap_by_area(const Placement& a, const Placement& b) {
  const auto common = geometry::intersect({a.outline_cm}, {b.outline_cm});
  return geometry::area(common) > rounding_slack_cm * geometry::edge_length(common);
}

std::string name(int piece) { return "piece " + std::to_string(piece + 1); }

Fault pair_fault(const Job& job, const Placement& a, const GridPiece& ga, const Placement& b,
                 const GridPiece& gb) {
  const std::int64_t least = on_grid(job.gap_cm - rounding_slack_cm);
  const std::int64_t reach = std::max<std::int64_t>(least, 0);
  if (ga.high.x + reach < gb.low.x || gb.high.x + reach < ga.low.x ||
      ga.high.y + reach < gb.low.y || gb.high.y + reach < ga.low.y) {
    return {};
  }
  const std::string both = name(a.piece) + " and " + name(b.piece);
  if (least <= 0) {
    if (overlap_by_area(a, b)) return both + " overlap";
    return {};
  }
  for (const auto& edge : ga.edges) {
    for (const auto& other : gb.edges) {
      if (edges_near(edge, other, least)) {
        return both + " lie nearer than " + format_short(job.gap_cm) + " cm";
      }
    }
  }
  // Their edges keep apart, so each lies wholly inside or wholly outside the other.
  if (inside(ga, gb.edges.front().from) || inside(gb, ga.edges.front().from)) {
    return both + " overlap";
  }
  return {};
}

Fault off_sheet(const Job& job, const CutSheet& sheet, const GridPiece& piece) {
  const std::int64_t low = on_grid(job.edge_gap_cm - rounding_slack_cm);
  const std::int64_t right = on_grid(sheet.length_cm - job.edge_gap_cm + rounding_slack_cm);
  const std::int64_t top = on_grid(sheet.width_cm - job.edge_gap_cm + rounding_slack_cm);
  if (piece.low.x >= low && piece.low.y >= low && piece.high.x <= right && piece.high.y <= top) {
    return {};
  }
  return name(piece.piece) + " lies over the sheet's edge or too near to it";
}

bool same_ring(const geometry::Ring& ring, const geometry::Ring& original, const Placement& by) {
  const Turn turn = Turn::by_deg(by.angle_deg);
  return ring.size() == original.size() &&
         std::equal(ring.begin(), ring.end(), original.begin(),
                    [&](geometry::Point p, geometry::Point q) {
                      return geometry::distance(p, turn(q) + by.shift_cm) <= tolerance::grid_cm;
                    });
}

Fault not_congruent(const Job& job, const Placement& placement) {
  const auto& original = job.pieces[static_cast<std::size_t>(placement.piece)];
  const auto& outline = placement.outline_cm;
  bool same = same_ring(outline.outer, original.outer, placement) &&
              outline.holes.size() == original.holes.size();
  for (std::size_t k = 0; same && k < original.holes.size(); ++k) {
    same = same_ring(outline.holes[k], original.holes[k], placement);
  }
  if (same) return {};
  return name(placement.piece) + " is not the shape that was to be cut";
}

bool allowed(const Job& job, double angle_deg) {
  return !job.rotations_deg ||
         std::any_of(job.rotations_deg->begin(), job.rotations_deg->end(),
                     [&](double r) { return std::abs(std::remainder(r - angle_deg, 360)) < 1e-9; });
}

Fault counting_fault(const Job& job, const Layout& layout) {
  std::vector<int> seen(job.pieces.size());
  auto count = [&](int piece) {
    if (piece < 0 || piece >= static_cast<int>(seen.size())) return false;
    ++seen[static_cast<std::size_t>(piece)];
    return true;
  };
  for (const auto& sheet : layout.sheets) {
    for (const auto& placement : sheet.placements) {
      if (!count(placement.piece)) return "a piece that the job does not have";
    }
  }
  for (const int piece : layout.unplaced) {
    if (!count(piece)) return "a piece that the job does not have";
  }
  for (std::size_t k = 0; k < seen.size(); ++k) {
    if (seen[k] == 0) return name(static_cast<int>(k)) + " is missing";
    if (seen[k] > 1) return name(static_cast<int>(k)) + " lies there more than once";
  }
  return {};
}

Fault stock_fault(const Job& job, const Layout& layout) {
  std::vector<int> used(job.sheets.size());
  for (const auto& sheet : layout.sheets) {
    if (job.strip_width_cm) {
      if (sheet.width_cm != *job.strip_width_cm) return "a strip of another width";
      continue;
    }
    if (sheet.kind < 0 || sheet.kind >= static_cast<int>(used.size())) return "an unknown sheet";
    const auto& kind = job.sheets[static_cast<std::size_t>(sheet.kind)];
    if (sheet.length_cm != kind.length_cm || sheet.width_cm != kind.width_cm) {
      return "a sheet of another size than its kind";
    }
    if (++used[static_cast<std::size_t>(sheet.kind)] > kind.available.value_or(1 << 30)) {
      return "more sheets than there are";
    }
  }
  return {};
}

Fault sheet_fault(const Job& job, const CutSheet& sheet) {
  std::vector<GridPiece> pieces;
  for (const auto& placement : sheet.placements) {
    if (!allowed(job, placement.angle_deg)) return name(placement.piece) + " is turned too far";
    if (auto fault = not_congruent(job, placement)) return fault;
    pieces.push_back(grid_piece(placement));
    if (auto fault = off_sheet(job, sheet, pieces.back())) return fault;
  }
  for (std::size_t a = 0; a < pieces.size(); ++a) {
    for (std::size_t b = a + 1; b < pieces.size(); ++b) {
      if (auto fault =
              pair_fault(job, sheet.placements[a], pieces[a], sheet.placements[b], pieces[b])) {
        return fault;
      }
    }
  }
  return {};
}

}  // namespace

std::optional<std::string> find_fault(const Job& job, const Layout& layout) {
  if (auto fault = counting_fault(job, layout)) return fault;
  if (auto fault = stock_fault(job, layout)) return fault;
  for (const auto& sheet : layout.sheets) {
    if (auto fault = sheet_fault(job, sheet)) return fault;
  }
  return {};
}

}  // namespace drapewright::cutting
