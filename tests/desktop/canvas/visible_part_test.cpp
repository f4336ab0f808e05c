#include "app/desktop/canvas/visible_part.h"

#include <gtest/gtest.h>

#include "core/geometry/distance.h"
#include "core/geometry/shapes.h"
#include "tests/support/sample_plan.h"

namespace drapewright::desktop {
namespace {

using geometry::Box;
using geometry::Polygon;
using geometry::Region;

constexpr Box everything{{-100, -100}, {100, 100}};

report::Sketch dense_sketch(int points) {
  const auto sample = support::dense_plan(points);
  return report::sketch_plan(sample.value, sample.plan);
}

TEST(VisiblePart, MovesNoLineByMoreThanTheTolerance) {
  const report::Sketch sketch = dense_sketch(20000);
  for (const double tolerance : {0.01, 0.05}) {
    const report::Sketch thin = visible_part(sketch, everything, tolerance);
    ASSERT_EQ(thin.layers.size(), sketch.layers.size());
    for (std::size_t i = 0; i < sketch.layers.size(); ++i) {
      if (sketch.layers[i].areas.empty()) continue;
      const geometry::EdgeIndex edges(Region{thin.layers[i].areas.front()});
      for (const geometry::Point p : sketch.layers[i].areas.front().outer) {
        ASSERT_LE(edges.nearest(p).distance_cm, 1.01 * tolerance);
      }
    }
  }
}

TEST(VisiblePart, DropsMostPointsOfADenseOutline) {
  const report::Sketch thin = visible_part(dense_sketch(20000), everything, 0.03);
  for (const report::SketchLayer& layer : thin.layers) {
    for (const Polygon& area : layer.areas) EXPECT_LT(area.outer.size(), 2000U);
  }
}

TEST(VisiblePart, CutsOffAtTheWindowAndNowhereElse) {
  report::Sketch sketch;
  sketch.layers = {{report::LayerKind::wound, {{geometry::circle(10), {geometry::circle(4)}}}, {}}};
  const Box window{{0, -20}, {20, 20}};  // the right half
  const report::Sketch part = visible_part(sketch, window, 1e-6);
  const Polygon& half = part.layers[0].areas[0];
  EXPECT_NEAR(geometry::area(half), 0.5 * geometry::area(sketch.layers[0].areas[0]), 1e-3);
  EXPECT_GE(geometry::bounding_box(half.outer).low.x, -1e-12);
  const report::Sketch none = visible_part(sketch, {{30, 30}, {40, 40}}, 1e-6);
  EXPECT_TRUE(none.layers[0].areas.empty());
}

}  // namespace
}  // namespace drapewright::desktop
