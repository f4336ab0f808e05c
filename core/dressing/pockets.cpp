#include "core/dressing/pockets.h"

#include <cmath>
#include <utility>

#include "core/base/tolerances.h"
#include "core/geometry/clock.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"

namespace drapewright::dressing {
namespace {

/// Chords of the wedge's far side. They lie far outside the pocket, so their number is of no
/// consequence; three keep every hour of a wide wedge beyond the reach.
constexpr int chords_per_quarter = 3;

/// How far a wedge reaches beyond its hours: pockets that meet at an hour share a seam, and must
/// not be parted there by a grid step, or the cut would keep its inset from the seam.
constexpr double seam_cm = tolerance::contact_cm;

/// The sector between two hours as seen from `centre`, out to at least `radius_cm`.
geometry::Region wedge(geometry::Point centre, const wound::Undermining& pocket, double radius_cm,
                       double head_deg) {
  const double span_deg = 30 * geometry::clock_span(pocket.from_clock, pocket.to_clock);
  const double start_deg = geometry::clock_direction_deg(pocket.from_clock, head_deg);
  const int chords = std::max(2, static_cast<int>(std::ceil(span_deg / 90 * chords_per_quarter)));
  const double far_cm = radius_cm / std::cos(geometry::radians(span_deg / chords / 2));
  // Hours run clockwise, directions counter-clockwise.
  const auto direction = [&](int chord) {
    const double angle = geometry::radians(start_deg - span_deg * chord / chords);
    return geometry::Point{std::cos(angle), std::sin(angle)};
  };
  geometry::Ring ring;
  for (int i = 0; i < chords; ++i) ring.push_back(centre + far_cm * direction(i));
  if (span_deg < 360) {
    const geometry::Point first = direction(0), last = direction(chords);
    const geometry::Point before = seam_cm * geometry::Point{-first.y, first.x};
    const geometry::Point after = seam_cm * geometry::Point{last.y, -last.x};
    ring.front() = ring.front() + before;
    ring.insert(ring.end(), {centre + far_cm * last + after, centre + after, centre + before});
  }
  return geometry::unite(std::vector<geometry::Region>{{{std::move(ring), {}}}});
}

geometry::Region without_holes(const geometry::Region& region) {
  geometry::Region filled;
  for (const geometry::Polygon& polygon : region) filled.push_back({polygon.outer, {}});
  return filled;
}

/// All that lies between the pocket's hours from the wound's middle out to its extent.
std::optional<geometry::Region> sector_of(const geometry::Region& filled, geometry::Point centre,
                                          const wound::Undermining& pocket, double head_deg) {
  const geometry::Offset reach = geometry::outset(filled, pocket.extent_cm);
  if (!reach.verified) return std::nullopt;
  double radius_cm = 0;
  for (const geometry::Point& p : geometry::outer_points(reach.region)) {
    radius_cm = std::max(radius_cm, geometry::distance(centre, p));
  }
  return geometry::intersect(reach.region, wedge(centre, pocket, radius_cm + 1, head_deg));
}

}  // namespace

std::optional<std::vector<Pocket>> pockets_of(const PreparedWound& wound, double head_deg) {
  std::vector<Pocket> pockets;
  const geometry::Region filled = without_holes(wound.shape);
  const geometry::Point centre = geometry::centroid(filled);
  for (const wound::Undermining& pocket : wound.wound->undermining) {
    const auto sector = sector_of(filled, centre, pocket, head_deg);
    if (!sector) return std::nullopt;
    pockets.push_back({geometry::subtract(*sector, filled), pocket.extent_cm});
  }
  return pockets;
}

std::optional<geometry::Region> undermined_outline(const PreparedWound& wound, double run_in_cm,
                                                   double head_deg) {
  const geometry::Offset bed = geometry::inset(*wound.map, run_in_cm);
  if (!bed.verified) return std::nullopt;
  const geometry::Region filled = without_holes(wound.shape);
  const geometry::Point centre = geometry::centroid(filled);
  geometry::Region outline = bed.region;
  for (const wound::Undermining& pocket : wound.wound->undermining) {
    const auto sector = sector_of(filled, centre, pocket, head_deg);
    if (!sector) return std::nullopt;
    outline = geometry::unite(outline, *sector);
  }
  // Islands are pillars of intact skin: nothing lies under them.
  return geometry::subtract(outline, geometry::subtract(filled, wound.shape));
}

}  // namespace drapewright::dressing
