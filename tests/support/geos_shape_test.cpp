#include "tests/support/geos_shape.h"

#include <gtest/gtest.h>

namespace drapewright::support {
namespace {

const geometry::Polygon square{{{0, 0}, {4, 0}, {4, 4}, {0, 4}}, {}};
const geometry::Polygon frame{{{0, 0}, {4, 0}, {4, 4}, {0, 4}}, {{{1, 1}, {1, 3}, {3, 3}, {3, 1}}}};

// The judge itself, on shapes that are known by heart.
TEST(GeosShape, MeasuresWhatIsKnownByHeart) {
  EXPECT_DOUBLE_EQ(GeosShape(square).area(), 16);
  EXPECT_DOUBLE_EQ(GeosShape(square).edge_length(), 16);
  EXPECT_DOUBLE_EQ(GeosShape(frame).area(), 12);
  EXPECT_DOUBLE_EQ(GeosShape(frame).edge_length(), 24);
  EXPECT_DOUBLE_EQ(GeosShape(square).edges().edge_length(), 16);
  EXPECT_TRUE(GeosShape().is_empty());
  EXPECT_EQ(GeosShape().area(), 0);
}

TEST(GeosShape, Offsets) {
  EXPECT_NEAR(GeosShape(square).buffered(-1).area(), 4, 1e-9);
  EXPECT_NEAR(GeosShape(square).buffered(1).area(), 16 + 16 + geometry::pi, 1e-3);
  EXPECT_NEAR(GeosShape(square).inscribed_radius(1e-4), 2, 1e-3);
  EXPECT_TRUE(GeosShape(square).buffered(-3).is_empty());
}

TEST(GeosShape, Relates) {
  const GeosShape whole(square), holed(frame), middle(geometry::Point{2, 2});
  EXPECT_TRUE(whole.covers(holed));
  EXPECT_FALSE(holed.covers(middle));
  EXPECT_DOUBLE_EQ(holed.distance(middle), 1);
  EXPECT_DOUBLE_EQ((whole - holed).area(), 4);
  EXPECT_DOUBLE_EQ((whole & holed).area(), 12);
  EXPECT_DOUBLE_EQ((whole | holed).area(), 16);
  EXPECT_DOUBLE_EQ(holed.distance(GeosShape(geometry::Segment{{5, 0}, {5, 9}})), 1);
}

TEST(GeosShape, MendsABowTie) {
  const GeosShape tie(geometry::Polygon{{{0, 0}, {2, 2}, {2, 0}, {0, 2}}, {}});
  EXPECT_FALSE(tie.is_valid());
  EXPECT_TRUE(tie.made_valid().is_valid());
  EXPECT_EQ(tie.made_valid().part_count(), 2);
}

}  // namespace
}  // namespace drapewright::support
