#include "core/dressing/measures.h"

#include <array>
#include <cmath>
#include <limits>
#include <string>

#include "core/base/numbers.h"
#include "core/base/say.h"
#include "core/dressing/pockets.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/practice/limits.h"

namespace drapewright::dressing {
namespace {

/// Even number of slices for Simpson's rule. The area of a convex shape's inset is a quadratic in
/// the distance, for which the rule is exact at any number; more slices serve the others.
constexpr int volume_slices = 24;

/// Kundin's volume factor (published, from memory: Am J Nurs 1989;89(2):206). Far less than the
/// cavity: shown beside the volume for comparison, never used to size filler.
constexpr double kundin_factor = 0.327;

/// Insets for the volume are drawn finer than those for cutting: always on the safe side, their
/// error would add up over the slices.
constexpr double volume_error_cm = 1e-3;

/// Volume under a wall that runs in evenly from the skin edge to the bed.
/// @returns nothing when an inset could not be verified
std::optional<double> sloping_volume(const geometry::Region& shape, double depth_cm,
                                     double run_in_cm) {
  const geometry::ClearanceMap map(shape, volume_error_cm / 5);
  double sum = geometry::area(map.region());
  for (int i = 1; i <= volume_slices; ++i) {
    const geometry::Offset at_depth =
        geometry::inset(map, run_in_cm * i / volume_slices, volume_error_cm);
    if (!at_depth.verified) return std::nullopt;
    const double weight = i == volume_slices ? 1 : (i % 2 == 1 ? 4 : 2);
    sum += weight * geometry::area(at_depth.region);
  }
  return sum * depth_cm / (3.0 * volume_slices);
}

double cavity_volume(const PreparedWound& prepared, FindingList& findings) {
  const wound::Wound& wound = *prepared.wound;
  if (wound.depth_cm <= 0) return 0;
  if (wound.wall_run_in_cm <= 0) return geometry::area(prepared.shape) * wound.depth_cm;
  if (const auto volume = sloping_volume(prepared.shape, wound.depth_cm, wound.wall_run_in_cm)) {
    return *volume;
  }
  findings.add(
      {.severity = Severity::warning,
       .code = "volume-unknown",
       .text = say("The volume under the sloping wall could not be worked out safely and is "
                   "left blank."),
       .source = own_rule(),
       .wound = wound.id});
  return std::numeric_limits<double>::quiet_NaN();
}

/// The width drawn as a line at right angles to the length, through the length's middle.
geometry::Segment width_line(const std::vector<geometry::Point>& points,
                             const geometry::Segment& length, double across_deg) {
  const geometry::Segment ends = geometry::extremes_along(points, across_deg);
  const geometry::Point middle = 0.5 * (length.from + length.to);
  const geometry::Point across{std::cos(geometry::radians(across_deg)),
                               std::sin(geometry::radians(across_deg))};
  return {middle + dot(ends.from - middle, across) * across,
          middle + dot(ends.to - middle, across) * across};
}

/// The area's spread grows with the edge: a ragged outline has far more edge than its hull.
void remark_on_spread(const WoundMeasures& m, const std::vector<geometry::Point>& points,
                      double tracing_error_cm, FindingList& findings) {
  const double share = practice::limit("largest_spread_share").standard;
  if (m.area.spread <= share * m.area.value) return;
  constexpr double ragged = 1.5;  // 1 for a convex wound; from here on the edge is to blame
  const double hull_cm = geometry::edge_length(geometry::convex_hull(points));
  const bool is_ragged = m.perimeter.value > ragged * hull_cm;
  const std::string area = format_number(m.area.value, 1);
  const std::string spread = format_number(m.area.spread, 1);
  const std::string doubt =
      is_ragged
          ? say("The area, {1} +/- {2} cm2, is hardly known: the outline is ragged, {3} cm of edge "
                "where {4} cm go round it. Trace it again, more smoothly.",
                {area, spread, format_number(m.perimeter.value, 1), format_number(hull_cm, 1)})
          : say("The area, {1} +/- {2} cm2, is hardly known: the wound is small for an edge drawn "
                "up to {3} mm off. Trace it larger.",
                {area, spread, format_short(10 * tracing_error_cm, 2)});
  findings.add({.severity = Severity::warning,
                .code = "spread-large",
                .text = doubt + " " + say("The volume and the fluid by area share this doubt."),
                .source = source_of_limit("largest_spread_share"),
                .wound = m.id,
                .where_cm = m.centroid_cm});
}

}  // namespace

WoundMeasures measure_wound(const PreparedWound& prepared, double head_deg, double tracing_error_cm,
                            FindingList& findings) {
  const std::vector<geometry::Point> points = geometry::outer_points(prepared.shape);
  WoundMeasures m;
  m.id = prepared.wound->id;
  m.perimeter.value = geometry::edge_length(prepared.shape);
  m.area = {geometry::area(prepared.shape), m.perimeter.value * tracing_error_cm};
  m.length_line = geometry::greatest_length(points);
  m.length_direction_deg =
      std::fmod(geometry::direction_deg(m.length_line.from, m.length_line.to), 180.0);
  const double across_deg = m.length_direction_deg + 90;
  m.width_line = width_line(points, m.length_line, across_deg);
  const double both_ends = 2 * tracing_error_cm;
  m.length = {norm(m.length_line.to - m.length_line.from), both_ends};
  m.width = {geometry::extent_along(points, across_deg), both_ends};
  m.head_to_foot = {geometry::extent_along(points, head_deg), both_ends};
  m.side_to_side = {geometry::extent_along(points, head_deg + 90), both_ends};
  m.rectangle_area_cm2 = m.length.value * m.width.value;
  m.ellipse_area_cm2 = geometry::pi / 4 * m.rectangle_area_cm2;
  m.volume = {cavity_volume(prepared, findings), m.area.spread * prepared.wound->depth_cm};
  m.kundin_volume_cm3 = kundin_factor * m.rectangle_area_cm2 * prepared.wound->depth_cm;
  m.centroid_cm = geometry::centroid(prepared.shape);
  remark_on_spread(m, points, tracing_error_cm, findings);
  return m;
}

double pocket_volume(const PreparedWound& wound, const std::vector<Layer>& layers,
                     double head_deg) {
  double height_cm = 0;
  for (const Layer& layer : layers) {
    if (layer.wound == wound.wound->id) height_cm = layer.thickness_cm;
  }
  const auto pockets = pockets_of(wound, head_deg);
  if (!pockets) return 0;
  double volume_cm3 = 0;
  for (const Pocket& pocket : *pockets) volume_cm3 += geometry::area(pocket.region) * height_cm;
  return volume_cm3;
}

}  // namespace drapewright::dressing
