#include "core/geometry/medial/soundness.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/geometry/distance.h"
#include "core/geometry/medial/crossing_test.h"
#include "core/geometry/shapes.h"
#include "tests/support/made_outlines.h"

namespace drapewright::geometry::medial {
namespace {

using support::OutlineMaker;

/// Laid on the grid as it is drawn: what the real frame avoids.
Outline square_to_grid(const Ring& ring) {
  const Region region{{ring, {}}};
  const Frame frame(region, 0);
  const Point x = frame.to_grid({1, 0}) - frame.to_grid({0, 0});
  return lay_on_grid(region, Frame(region, std::atan2(x.y, x.x)), 0);
}

/// Whether every vertex of the diagram is as far from the outline as it says, by brute force.
bool is_true(const Diagram& diagram) {
  for (const Vertex& v : diagram.vertices) {
    if (std::isinf(v.clearance)) continue;
    double nearest = std::numeric_limits<double>::infinity();
    for (int i = 0; i < diagram.outline.size(); ++i) {
      const int next = diagram.outline.next[static_cast<std::size_t>(i)];
      nearest = std::min(nearest,
                         distance(v.at, nearest_on({diagram.start(i), diagram.start(next)}, v.at)));
    }
    if (std::abs(nearest - v.clearance) > 1 + 1e-6 * v.clearance) return false;
  }
  return true;
}

TEST(Soundness, TrueDiagramsRaiseNoAlarm) {
  OutlineMaker maker(11);
  for (int i = 0; i < 60; ++i) {
    const Ring ring = i % 3 == 0   ? maker.star(maker.whole(3, 20), 5)
                      : i % 3 == 1 ? maker.blob(maker.whole(8, 80), 4)
                                   : maker.staircase(maker.whole(8, 80), 3);
    const Region region{{ring, {}}};
    const auto diagram =
        build_diagram(lay_on_grid(region, Frame(region, 0.1234), 0), Circles::exact);
    ASSERT_TRUE(diagram);
    EXPECT_EQ(find_fault(*diagram), "");
    EXPECT_TRUE(is_true(*diagram));
  }
}

/// Long edges a few grid units off the axes make Boost.Polygon 1.81 lose vertices: each such
/// diagram must raise the alarm. One that raises none must be true.
TEST(Soundness, NoWrongDiagramOfASkylinePasses) {
  OutlineMaker maker(12);
  int alarms = 0;
  for (int i = 0; i < 400; ++i) {
    const Outline outline = square_to_grid(maker.skyline(maker.whole(3, 25), 0.2));
    if (edges_meet(outline)) continue;
    for (const Circles circles : {Circles::quick, Circles::exact}) {
      const auto diagram = build_diagram(outline, circles);
      if (!diagram || !find_fault(*diagram).empty()) {
        ++alarms;
        continue;
      }
      EXPECT_TRUE(is_true(*diagram)) << "skyline " << i;
    }
  }
  RecordProperty("alarms", alarms);
}

/// Skylines on the grid of which a wrong diagram was made, kept as they were found.
const std::vector<std::vector<GridPoint>> kept_skylines = {
    // Boost.Polygon 1.81 makes a vertex too few, with exact circles.
    {{-170078, -77173}, {270035, -77226}, {269811, 22878},  {249966, 22770},  {250047, -37084},
     {230028, -37434},  {229900, -37408}, {209833, -37327}, {209816, -37237}, {189865, -37182},
     {190004, -37177},  {170056, -37307}, {169801, 22588},  {149985, 22644},  {149988, 22644},
     {130058, 22861},   {130035, 82753},  {109772, 82917},  {109747, 42687},  {90051, 42560},
     {89775, 2523},     {70056, 2593},    {69742, 22761},   {49934, 22755},   {49753, 22739},
     {30086, 22779},    {30046, -17113},  {10098, -17254},  {9892, 22564},    {-10159, 22640},
     {-10230, 82778},   {-30140, 82897},  {-30137, 102894}, {-50080, 102552}, {-50030, 162544},
     {-70041, 162683},  {-70186, 142536}, {-89889, 142800}, {-90133, 142521}, {-109982, 142712},
     {-110262, 82584},  {-130091, 82839}, {-130218, 82648}, {-150048, 82772}, {-149917, 122720},
     {-170267, 122638}},
    // Wrong far outside, with circles in doubles: no cell is out of order near by.
    {{-194202, -134774}, {205789, -135026}, {205896, 45171},   {185707, 45011},   {185667, 105097},
     {165711, 105081},   {165685, 145212},  {145754, 144963},  {145888, 165018},  {125822, 165271},
     {125573, 145151},   {105743, 145008},  {105725, 165070},  {85950, 164954},   {85602, 125155},
     {65823, 125148},    {65692, 164939},   {45810, 164971},   {45777, 124995},   {25832, 124964},
     {25923, 64917},     {5576, 65236},     {5626, 85151},     {-14368, 85091},   {-14368, 65031},
     {-34293, 65254},    {-34107, 125088},  {-54318, 125142},  {-54402, 85121},   {-74385, 85213},
     {-74257, 45255},    {-94054, 44979},   {-94343, 85236},   {-114219, 85050},  {-114086, 145268},
     {-134391, 145211},  {-134386, 185293}, {-154041, 185051}, {-154147, 225164}, {-174079, 224932},
     {-174381, 205140},  {-194091, 205028}},
    {{-299462, -152674}, {280400, -152685}, {280371, 87455},   {260227, 87594},   {260194, 147386},
     {240291, 147377},   {240485, 187434},  {220562, 187347},  {220444, 207591},  {200562, 207523},
     {200317, 147346},   {180574, 147270},  {180353, 107275},  {160236, 107616},  {160296, 87608},
     {140393, 87458},    {140393, 147345},  {120218, 147397},  {120380, 167446},  {100415, 167481},
     {100324, 187567},   {80533, 187539},   {80528, 147556},   {60461, 147334},   {60500, 207523},
     {40231, 207487},    {40556, 207571},   {20344, 207460},   {20261, 227325},   {550, 227464},
     {335, 167334},      {-19708, 167397},  {-19708, 187580},  {-39679, 187393},  {-39785, 167302},
     {-59781, 167257},   {-59728, 127374},  {-79608, 127535},  {-79755, 187281},  {-99480, 187591},
     {-99661, 127443},   {-119630, 127415}, {-119723, 127490}, {-139679, 127596}, {-139438, 167331},
     {-159653, 167397},  {-159493, 147563}, {-179726, 147575}, {-179687, 127377}, {-199589, 127295},
     {-199783, 67444},   {-219452, 67306},  {-219693, 87256},  {-239624, 87426},  {-239772, 147602},
     {-259454, 147348},  {-259509, 87262},  {-279595, 87517},  {-279760, 27272},  {-299816, 27532}},
};

Outline outline_of(const std::vector<GridPoint>& corners) {
  Outline outline;
  outline.corners = corners;
  outline.polygons = 1;
  const int count = static_cast<int>(corners.size());
  for (int i = 0; i < count; ++i) {
    outline.next.push_back((i + 1) % count);
    outline.previous.push_back((i + count - 1) % count);
    outline.polygon.push_back(0);
  }
  return outline;
}

TEST(Soundness, NoWrongDiagramOfAKeptSkylinePasses) {
  for (const auto& corners : kept_skylines) {
    for (const Circles circles : {Circles::quick, Circles::exact}) {
      const auto diagram = build_diagram(outline_of(corners), circles);
      if (diagram && find_fault(*diagram).empty()) {
        EXPECT_TRUE(is_true(*diagram));
      }
    }
  }
}

class DamagedDiagram : public ::testing::Test {
 protected:
  DamagedDiagram() {
    OutlineMaker maker(13);
    const Region region{{maker.star(7, 5), {}}};
    diagram = *build_diagram(lay_on_grid(region, Frame(region, 0.1234), 0), Circles::exact);
  }
  void SetUp() override { ASSERT_EQ(find_fault(diagram), ""); }
  Diagram diagram;
};

TEST_F(DamagedDiagram, MovedVertexIsSeen) {
  for (Vertex& vertex : diagram.vertices) {
    if (!std::isfinite(vertex.clearance)) continue;
    const Vertex kept = vertex;
    vertex.at = vertex.at + Point{0.3 + 1e-3 * vertex.clearance, 0};
    EXPECT_NE(find_fault(diagram), "");
    vertex = kept;
  }
}

TEST_F(DamagedDiagram, SwappedSidesAreSeen) {
  for (Vertex& vertex : diagram.vertices) {
    if (vertex.side == Side::edge || !std::isfinite(vertex.clearance)) continue;
    const Side kept = vertex.side;
    vertex.side = kept == Side::inside ? Side::outside : Side::inside;
    EXPECT_NE(find_fault(diagram), "");
    vertex.side = kept;
  }
}

TEST_F(DamagedDiagram, SkippedHalfEdgeIsSeen) {
  for (HalfEdge& edge : diagram.edges) {
    const int kept = edge.next;
    edge.next = diagram.next(kept);
    EXPECT_NE(find_fault(diagram), "");
    edge.next = kept;
  }
}

TEST(CrossingTest, FindsWhatMeetsAndNothingElse) {
  const auto meets = [](const Ring& ring) { return edges_meet(square_to_grid(ring)); };
  EXPECT_FALSE(meets({{0, 0}, {4, 0}, {4, 3}, {0, 3}}));
  EXPECT_TRUE(meets({{0, 0}, {4, 3}, {4, 0}, {0, 3}, {-1, 1}}));         // a bow
  EXPECT_TRUE(meets({{0, 0}, {4, 0}, {2, 2}, {2, 0}, {0, 4}}));          // a corner on an edge
  EXPECT_TRUE(meets({{0, 0}, {2, 1}, {4, 0}, {4, 2}, {2, 1}, {0, 2}}));  // corner on corner
  EXPECT_TRUE(meets({{0, 0}, {3, 0}, {3, 1}, {1, 1}, {1, 0}, {2, 0}, {2, -1}, {0, -1}}));
}

/// Against every pair of edges, tried one by one.
TEST(CrossingTest, AgreesWithBruteForce) {
  OutlineMaker maker(14);
  int crossing = 0;
  for (int round = 0; round < 500; ++round) {
    Ring ring = maker.star(maker.whole(3, 12), 3);
    if (round % 2 == 0) std::swap(ring[0], ring[static_cast<std::size_t>(maker.whole(1, 5))]);
    const Outline outline = square_to_grid(ring);
    bool meets = false;
    for (int i = 0; i < outline.size(); ++i) {
      for (int j = i + 1; j < outline.size(); ++j) {
        const int i_end = outline.next[static_cast<std::size_t>(i)];
        const int j_end = outline.next[static_cast<std::size_t>(j)];
        if (i_end == j || j_end == i) continue;
        const auto at = [&](int k) { return outline.corners[static_cast<std::size_t>(k)]; };
        const auto apart = [&](int a, int b, int p, int q) {
          const auto s = turn(at(a), at(b), at(p));
          const auto t = turn(at(a), at(b), at(q));
          return (s > 0 && t > 0) || (s < 0 && t < 0);
        };
        meets |= !apart(i, i_end, j, j_end) && !apart(j, j_end, i, i_end);
      }
    }
    crossing += meets;
    EXPECT_EQ(edges_meet(outline), meets) << round;
  }
  EXPECT_GT(crossing, 50);
}

}  // namespace
}  // namespace drapewright::geometry::medial
