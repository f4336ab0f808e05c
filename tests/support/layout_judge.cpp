#include "tests/support/layout_judge.h"

#include <cmath>
#include <set>
#include <utility>
#include <vector>

#include "core/base/numbers.h"
#include "tests/support/geos_shape.h"

namespace drapewright::support {
namespace {

constexpr double hair_cm = 1e-4;

geometry::Polygon rectangle(geometry::Point low, geometry::Point high) {
  return {{low, {high.x, low.y}, high, {low.x, high.y}}, {}};
}

geometry::Ring moved(const geometry::Ring& ring, const cutting::Placement& by) {
  const double turn = by.angle_deg * geometry::pi / 180;
  geometry::Ring result;
  for (const geometry::Point p : ring) {
    result.push_back({p.x * std::cos(turn) - p.y * std::sin(turn) + by.shift_cm.x,
                      p.x * std::sin(turn) + p.y * std::cos(turn) + by.shift_cm.y});
  }
  return result;
}

bool is_moved(const geometry::Polygon& original, const cutting::Placement& placement) {
  geometry::Polygon expected{moved(original.outer, placement), {}};
  for (const auto& hole : original.holes) expected.holes.push_back(moved(hole, placement));
  const GeosShape a(expected), b(placement.outline_cm);
  return (a - b).area() + (b - a).area() <= hair_cm * (1 + a.edge_length());
}

std::optional<std::string> fault_of_sheet(const cutting::Job& job, const cutting::CutSheet& sheet) {
  const double edge = job.edge_gap_cm - hair_cm;
  const GeosShape room(rectangle({edge, edge}, {sheet.length_cm - edge, sheet.width_cm - edge}));
  std::vector<GeosShape> shapes;
  for (const cutting::Placement& placement : sheet.placements) {
    const std::string name = "piece " + std::to_string(placement.piece);
    const GeosShape shape(placement.outline_cm);
    if (!is_moved(job.pieces[static_cast<std::size_t>(placement.piece)], placement)) {
      return name + " is not the job's own";
    }
    if (!room.covers(shape)) return name + " comes too near the edge of its sheet";
    for (const GeosShape& other : shapes) {
      if (shape.distance(other) < job.gap_cm - hair_cm) return name + " comes too near another";
      if ((shape & other).area() > hair_cm * (1 + shape.edge_length())) {
        return name + " lies over another";
      }
    }
    shapes.push_back(shape);
  }
  return std::nullopt;
}

}  // namespace

std::optional<std::string> fault_by_geos(const cutting::Job& job, const cutting::Layout& layout) {
  std::multiset<int> seen(layout.unplaced.begin(), layout.unplaced.end());
  for (const cutting::CutSheet& sheet : layout.sheets) {
    if (auto fault = fault_of_sheet(job, sheet)) return fault;
    for (const cutting::Placement& placement : sheet.placements) seen.insert(placement.piece);
  }
  for (int piece = 0; std::cmp_less(piece, job.pieces.size()); ++piece) {
    if (seen.count(piece) != 1) return "piece " + std::to_string(piece) + " is not there once";
  }
  return std::nullopt;
}

}  // namespace drapewright::support
