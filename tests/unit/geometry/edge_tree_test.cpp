#include "core/geometry/edge_tree.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "core/geometry/distance.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

// Trees of different depths once asked each other's depth of the wrong one.
TEST(EdgeTrees, OfDifferentSizesMeetAllTheirPairs) {
  const Ring large = circle(10, {}, 360);
  for (const int corners : {8, 40, 300}) {
    const Ring small = circle(2, {3, 0}, corners);
    const EdgeTree a(edges_of(large));
    const EdgeTree b(edges_of(small));
    for (const auto& [x, y] : {std::pair(&a, &b), std::pair(&b, &a)}) {
      std::size_t found = 0;
      x->for_close_boxes(*y, 1.0, [&](std::size_t, std::size_t) {
        ++found;
        return true;
      });
      std::size_t expected = 0;
      for (const Segment& s : x->edges()) {
        expected += static_cast<std::size_t>(std::ranges::count_if(
            y->edges(), [&](const Segment& t) { return close(box_of(s), box_of(t), 1.0); }));
      }
      EXPECT_EQ(found, expected) << corners;
      EXPECT_GT(found, 0u);
    }
    EXPECT_NEAR(gap_between_edges({{small, {}}}, {{large, {}}}).distance_cm, 1, 0.06);
    EXPECT_NEAR(gap_between_edges({{large, {}}}, {{small, {}}}).distance_cm, 1, 0.06);
  }
}

}  // namespace
}  // namespace drapewright::geometry
