// The shortest way for a bridge beside a search on a grid.

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <queue>

#include "core/geometry/distance.h"
#include "core/geometry/shapes.h"
#include "core/geometry/validity.h"
#include "core/geometry/way.h"
#include "tests/support/geos_shape.h"
#include "tests/support/made_outlines.h"

namespace drapewright::geometry {
namespace {

constexpr double step_cm = 0.1;
constexpr int columns = 200, rows = 160;

/// Steps to 16 neighbours: at worst 2.8 % longer than the straight way.
constexpr double detour = 1.028;
constexpr std::pair<int, int> steps[] = {{1, 0},   {0, 1},   {1, 1},  {1, -1}, {2, 1},   {1, 2},
                                         {2, -1},  {1, -2},  {-1, 0}, {0, -1}, {-1, -1}, {-1, 1},
                                         {-2, -1}, {-1, -2}, {-2, 1}, {-1, 2}};

Point at(int node) { return {step_cm * (node % columns) - 10, step_cm * (node / columns) - 8}; }

double grid_way(const Region& from, const Region& to, const Region& obstacles) {
  std::vector<double> ways(columns * rows, std::numeric_limits<double>::infinity());
  std::vector<bool> barred(ways.size());
  using Entry = std::pair<double, int>;
  std::priority_queue<Entry, std::vector<Entry>, std::greater<>> open;
  for (int node = 0; node < columns * rows; ++node) {
    const auto i = static_cast<std::size_t>(node);
    barred[i] = contains(obstacles, at(node));
    if (!barred[i] && contains(from, at(node))) open.emplace(ways[i] = 0, node);
  }
  while (!open.empty()) {
    const auto [way, node] = open.top();
    open.pop();
    if (way > ways[static_cast<std::size_t>(node)]) continue;
    if (contains(to, at(node))) return way;
    for (const auto& [dx, dy] : steps) {
      const int x = node % columns + dx, y = node / columns + dy;
      if (x < 0 || x >= columns || y < 0 || y >= rows) continue;
      const int next = y * columns + x;
      const auto n = static_cast<std::size_t>(next);
      const double longer = way + step_cm * std::hypot(dx, dy);
      if (barred[n] || longer >= ways[n]) continue;
      open.emplace(ways[n] = longer, next);
    }
  }
  return std::numeric_limits<double>::infinity();
}

TEST(ShortestWay, IsNoLongerThanOneOnAGrid) {
  support::OutlineMaker maker(47);
  const Region from = {{circle(2, {-7, 0}), {}}}, to = {{circle(2, {7, 0}), {}}};
  for (int i = 0; i < 30; ++i) {
    // One behind the other, so that none touches another and ways lead between them.
    Region obstacles;
    for (const double x : {-3.5, 0.0, 3.5}) {
      const Ring ring = turned(maker.comb(2, 0.8, 0.6, 2), maker.between(0, 360));
      const Point by{x, maker.between(-2, 2)};
      const Tidied obstacle = tidy({moved(i % 2 == 0 ? maker.blob(12, 1.2) : ring, by), {}});
      if (!contains(obstacle.region, {-7, 0})) obstacles.push_back(obstacle.region.front());
    }
    if (!support::GeosShape(obstacles).is_valid()) continue;
    const auto way = shortest_way(from, to, obstacles);
    const double grid = grid_way(from, to, obstacles);
    ASSERT_TRUE(way) << i;
    // Its samples cost an eighth at either end; the grid starts and ends inside, and cuts corners.
    EXPECT_LE(way->length_cm, grid + 0.25) << i;
    EXPECT_GE(way->length_cm, grid / detour - 0.35) << i;
    const support::GeosShape bars = support::GeosShape(obstacles).buffered(-1e-6);
    for (std::size_t k = 1; k < way->points.size(); ++k) {
      const support::GeosShape leg(Segment{way->points[k - 1], way->points[k]});
      EXPECT_LE((leg & bars).edge_length(), 1e-6) << i;
    }
  }
}

}  // namespace
}  // namespace drapewright::geometry
