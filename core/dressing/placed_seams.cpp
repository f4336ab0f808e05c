#include "core/dressing/placed_seams.h"

#include "core/geometry/distance.h"
#include "core/geometry/shapes.h"

namespace drapewright::dressing {
namespace {

/// How near a piece's edge has to run to a seam to be a side of it.
constexpr double seam_reach_cm = 1e-3;

bool may_have_seams(const Placement& placement) {
  return placement.use == PieceUse::layer || placement.use == PieceUse::bridge;
}

}  // namespace

std::vector<geometry::Segment> placed_seams(const Fill& fill, const Placement& placement) {
  std::vector<geometry::Segment> placed;
  if (fill.seams.empty() || !may_have_seams(placement)) return placed;
  const auto on_sheet = [&](geometry::Point p) {
    return geometry::moved(geometry::turned(p, placement.angle_deg), placement.shift_cm);
  };
  const geometry::EdgeIndex edges(geometry::Region{placement.outline_cm});
  for (const Seam& seam : fill.seams) {
    if (seam.wound != placement.wound || seam.layer != placement.layer) continue;
    const geometry::Segment line{on_sheet(seam.line.from), on_sheet(seam.line.to)};
    if (edges.nearest(0.5 * (line.from + line.to)).distance_cm <= seam_reach_cm) {
      placed.push_back(line);
    }
  }
  return placed;
}

}  // namespace drapewright::dressing
