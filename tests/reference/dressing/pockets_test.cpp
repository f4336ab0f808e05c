// Undermined pockets beside GEOS: the sector by its own construction, the cut by its own buffers.

#include "core/dressing/pockets.h"

#include <gtest/gtest.h>

#include <cmath>

#include "core/dressing/plan.h"
#include "core/geometry/measures.h"
#include "tests/support/geos_shape.h"
#include "tests/support/made_outlines.h"

namespace drapewright::dressing {
namespace {

using support::GeosShape;

/// Between two hours, clockwise, as seen from the wound's middle: in steps of a tenth of an hour.
GeosShape fan(geometry::Point middle, double from_hour, double to_hour, double head_deg) {
  double hours = to_hour - from_hour;
  if (hours <= 0) hours += 12;
  const int steps = static_cast<int>(std::ceil(10 * hours));
  geometry::Ring ring{middle};
  for (int i = 0; i <= steps; ++i) {
    const double angle = (head_deg - 30 * (from_hour + hours * i / steps)) * geometry::pi / 180;
    ring.push_back(middle + 200 * geometry::Point{std::cos(angle), std::sin(angle)});
  }
  return GeosShape(geometry::Polygon{ring, {}});
}

TEST(AgainstGeos, Pockets) {
  support::OutlineMaker maker(37);
  for (int i = 0; i < 60; ++i) {
    wound::Case value{.label = "made", .head_direction_deg = maker.between(0, 360)};
    value.assessments.push_back({.date = "2026-01-01"});
    const wound::Undermining pocket{.from_clock = maker.between(0.1, 12),
                                    .to_clock = maker.between(0.1, 12),
                                    .extent_cm = maker.between(0.2, 4)};
    value.current().wounds.push_back(
        {.id = "A",
         .outline_cm = i % 2 == 0 ? maker.blob(50, 3) : maker.star(7, 4),
         .depth_cm = 1,
         .wall_run_in_cm = i % 3 == 0 ? 0.3 : 0,
         .undermining = {pocket}});
    const Plan plan = plan_dressing(value);
    const wound::Wound& wound = value.current().wounds[0];
    const GeosShape shape(geometry::Polygon{wound.outline_cm, {}});
    const GeosShape sector = shape.buffered(pocket.extent_cm) &
                             fan(geometry::centroid(wound.outline_cm), pocket.from_clock,
                                 pocket.to_clock, value.head_direction_deg);
    const double volume = (sector - shape).area() * plan.fill.layers.at(0).thickness_cm;
    const double drawn = 0.006 * sector.edge_length();
    EXPECT_NEAR(plan.wounds[0].pocket_volume_cm3, volume, drawn) << i;

    const GeosShape outline = shape.buffered(-wound.wall_run_in_cm) | sector;
    const GeosShape cut = outline.buffered(-value.dressing.inset_cm);
    const GeosShape ours(plan.fill.layers[0].pieces);
    const double edge = 2 * 0.006 * (outline.edge_length() + cut.edge_length());
    EXPECT_LE((cut - ours).area() + (ours - cut).area(), edge) << i;
  }
}

}  // namespace
}  // namespace drapewright::dressing
