#include "core/geometry/measures.h"

#include <gtest/gtest.h>

#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"
#include "core/geometry/validity.h"
#include "tests/reference/geometry/samples.h"
#include "tests/support/geos_shape.h"

namespace drapewright::geometry {
namespace {

using reference::Sample;
using reference::samples;
using support::GeosShape;

// Calculated: pi/4 L W, and the ellipse's edge by the complete elliptic integral.
TEST(PublishedMeasures, Ellipses) {
  struct Row {
    double length, width, area, edge;
  };
  for (const Row& row :
       {Row{8, 5, 31.4159, 20.69314}, Row{10, 6, 47.1239, 25.52700}, Row{4, 2, 6.2832, 9.68845}}) {
    const Ring ring = ellipse(row.length, row.width, {}, 0, 3600);
    EXPECT_NEAR(area(ring), row.area, 5e-5);
    EXPECT_NEAR(edge_length(ring), row.edge, 1e-4);
    // A perfect ellipse's length times width overstates its area by 4/pi - 1 = 27.32 %.
    EXPECT_NEAR(row.length * row.width / area(ring) - 1, 0.2732, 5e-5);
  }
}

TEST(AgainstGeos, AreaEdgeAndValidity) {
  for (const Sample& sample : samples()) {
    const GeosShape geos(sample.region);
    EXPECT_TRUE(geos.is_valid()) << sample.name;
    EXPECT_NEAR(geos.area(), area(sample.region), 1e-9) << sample.name;
    EXPECT_NEAR(geos.edge_length(), edge_length(sample.region), 1e-9) << sample.name;
  }
}

TEST(AgainstGeos, TidyingKeepsTheArea) {
  int spiky = 0;
  for (const support::GeneratedOutline& outline : support::generated_outlines(500)) {
    ASSERT_FALSE(find_fault(outline.polygon.outer, 100)) << outline.name;
    ASSERT_FALSE(find_island_fault(outline.polygon.outer, outline.polygon.holes, 100))
        << outline.name;
    const Tidied tidied = tidy(outline.polygon);
    const double slack = 1e-5 * edge_length(outline.polygon) + 1e-9;
    EXPECT_NEAR(area(tidied.region), area(outline.polygon), slack) << outline.name;
    EXPECT_NEAR(GeosShape(outline.polygon).made_valid().area(), area(tidied.region), slack)
        << outline.name;
    spiky += tidied.spikes_removed > 0 ? 1 : 0;
  }
  EXPECT_GT(spiky, 20);
}

// Neighbours in the list are unlike kinds; the second is laid over the first.
TEST(AgainstGeos, Overlays) {
  const std::vector<Sample>& all = samples();
  for (std::size_t i = 0; i + 1 < all.size(); i += 2) {
    const Region& a = all[i].region;
    const Region b = moved(all[i + 1].region, centroid(a) - centroid(all[i + 1].region));
    const GeosShape geos_a(a);
    const GeosShape geos_b(b);
    // Every crossing and corner may move by a grid step across the edges there.
    const double slack = 2e-5 * (edge_length(a) + edge_length(b));
    EXPECT_NEAR(area(unite(a, b)), (geos_a | geos_b).area(), slack) << all[i].name;
    EXPECT_NEAR(area(intersect(a, b)), (geos_a & geos_b).area(), slack) << all[i].name;
    EXPECT_NEAR(area(subtract(a, b)), (geos_a - geos_b).area(), slack) << all[i].name;
    for (const Region& result : {unite(a, b), intersect(a, b), subtract(a, b)}) {
      EXPECT_TRUE(GeosShape(result).is_valid()) << all[i].name;
    }
  }
}

}  // namespace
}  // namespace drapewright::geometry
