#include "core/geometry/distance.h"

#include <gtest/gtest.h>

#include <random>
#include <stdexcept>

#include "core/geometry/edge_tree.h"
#include "core/geometry/shapes.h"

namespace drapewright::geometry {
namespace {

Region star(int points, double outer_cm, double inner_cm, Point centre = {}) {
  Ring ring;
  for (int i = 0; i < 2 * points; ++i) {
    const double angle = pi * i / points;
    const double radius = i % 2 == 0 ? outer_cm : inner_cm;
    ring.push_back(centre + radius * Point{std::cos(angle), std::sin(angle)});
  }
  return {{ring, {}}};
}

double distance_by_trying(const Region& region, Point p) {
  double best = 1e300;
  for (const Segment& s : edges_of(region)) best = std::min(best, distance(p, nearest_on(s, p)));
  return best;
}

TEST(Distance, NearestOnASegment) {
  const Segment s{{0, 0}, {4, 0}};
  EXPECT_EQ(nearest_on(s, {1, 3}), (Point{1, 0}));
  EXPECT_EQ(nearest_on(s, {-1, 3}), (Point{0, 0}));
  EXPECT_EQ(nearest_on(s, {9, 3}), (Point{4, 0}));
  EXPECT_EQ(nearest_on({{2, 2}, {2, 2}}, {9, 3}), (Point{2, 2}));
}

TEST(Distance, ContainsCountsTheEdgeAndNotTheHole) {
  const Polygon polygon{rectangle(6, 4), {rectangle(2, 2)}};
  EXPECT_TRUE(contains(polygon, {2, 0}));
  EXPECT_TRUE(contains(polygon, {3, 0}));
  EXPECT_TRUE(contains(polygon, {3, 2}));
  EXPECT_TRUE(contains(polygon, {1, 0}));
  EXPECT_FALSE(contains(polygon, {0, 0}));
  EXPECT_FALSE(contains(polygon, {3.001, 0}));
  EXPECT_TRUE(contains(Region{polygon, {rectangle(1, 1), {}}}, {0, 0}));
}

TEST(EdgeIndex, AgreesWithAWalkAlongAllEdges) {
  std::mt19937 random(11);
  std::uniform_real_distribution<double> at(-12, 12);
  for (const int points : {2, 3, 7, 40, 500}) {
    Region region = star(points, 8, 3);
    region.front().holes = {circle(1.5)};
    const EdgeIndex index(region);
    for (int i = 0; i < 300; ++i) {
      const Point p{at(random), at(random)};
      const EdgeIndex::Hit hit = index.nearest(p);
      EXPECT_NEAR(hit.distance_cm, distance_by_trying(region, p), 1e-12);
      EXPECT_NEAR(distance(p, hit.on_edge), hit.distance_cm, 1e-12);
    }
  }
}

TEST(EdgeTree, ComesWithinAgreesWithTheNearest) {
  std::mt19937 random(13);
  std::uniform_real_distribution<double> at(-12, 12);
  std::uniform_real_distribution<double> reach(0, 5);
  for (const int points : {2, 3, 7, 40, 500}) {
    const EdgeTree tree(edges_of(star(points, 8, 3)));
    for (int i = 0; i < 300; ++i) {
      const Point p{at(random), at(random)};
      const double within = reach(random);
      EXPECT_EQ(tree.comes_within(p, within), tree.nearest(p).squared <= within * within);
    }
  }
}

TEST(EdgeIndex, ThrowsWithoutEdges) {
  const EdgeIndex index(Region{});
  EXPECT_TRUE(index.empty());
  EXPECT_THROW(index.nearest({}), std::logic_error);
}

TEST(EdgeTree, InsideAgreesWithContains) {
  std::mt19937 random(12);
  std::uniform_real_distribution<double> at(-9, 9);
  const Region region{{star(30, 8, 4).front().outer, {rectangle(2, 2, {1, 0}, 10)}}};
  const EdgeTree tree(edges_of(region));
  for (int i = 0; i < 2000; ++i) {
    const Point p{at(random), at(random)};
    EXPECT_EQ(tree.inside(p), contains(region, p));
  }
}

TEST(EdgeTree, NearestToASegmentIsFoundOnlyBelowTheBound) {
  const EdgeTree tree(edges_of(star(50, 8, 7)));
  const Segment far{{-3, -1}, {3, 1}};
  EXPECT_EQ(tree.nearest(far, 2).squared, 4);
  double best = 1e300;
  for (const Segment& s : tree.edges()) {
    const Segment way = shortest_between(far, s);
    best = std::min(best, distance(way.from, way.to));
  }
  EXPECT_NEAR(std::sqrt(tree.nearest(far, 100).squared), best, 1e-12);
}

TEST(Gap, IsTheShortestWayBetweenEdges) {
  const Gap gap = gap_between_edges({{rectangle(2, 2), {}}}, {{rectangle(2, 2, {5, 1}), {}}});
  EXPECT_DOUBLE_EQ(gap.distance_cm, 3);
  EXPECT_DOUBLE_EQ(gap.shortest.from.x, 1);
  EXPECT_DOUBLE_EQ(gap.shortest.to.x, 4);
}

TEST(Gap, IsNothingWhereEdgesCrossAndNotInsideAnother) {
  const Region big{{rectangle(8, 8), {}}};
  EXPECT_DOUBLE_EQ(gap_between_edges(big, {{rectangle(2, 2, {4, 0}), {}}}).distance_cm, 0);
  EXPECT_DOUBLE_EQ(gap_between_edges(big, {{rectangle(2, 2), {}}}).distance_cm, 3);
}

TEST(Gap, AgreesWithAllPairs) {
  const Region a = star(60, 6, 5);
  for (double turn = 0; turn < 20; turn += 1.7) {
    const Region b = turned(star(45, 6, 4, {14, 3}), turn);
    double best = 1e300;
    for (const Segment& s : edges_of(a)) {
      for (const Segment& t : edges_of(b)) {
        const Segment way = shortest_between(s, t);
        best = std::min(best, distance(way.from, way.to));
      }
    }
    EXPECT_NEAR(gap_between_edges(a, b).distance_cm, best, 1e-12);
  }
}

TEST(Gap, NeedsTwoRegions) {
  EXPECT_THROW(gap_between_edges({}, star(5, 2, 1)), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::geometry
