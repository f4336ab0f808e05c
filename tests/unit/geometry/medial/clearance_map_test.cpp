#include "core/geometry/medial/clearance_map.h"

#include <gtest/gtest.h>

#include <cmath>
#include <stdexcept>

#include "core/geometry/measures.h"
#include "core/geometry/overlay.h"
#include "core/geometry/shapes.h"
#include "tests/support/made_outlines.h"

namespace drapewright::geometry {
namespace {

using support::OutlineMaker;

constexpr double error = tolerance::offset_cm;

Region box(double length, double width, Point centre = {}, double angle_deg = 0) {
  return {{rectangle(length, width, centre, angle_deg), {}}};
}

Region annulus(double outer_radius, double inner_radius) {
  Ring hole = circle(2 * inner_radius);
  std::reverse(hole.begin(), hole.end());
  return {{circle(2 * outer_radius), {hole}}};
}

Region checked(const Offset& offset) {
  EXPECT_TRUE(offset.verified) << offset.doubt;
  return offset.region;
}

TEST(ClearanceMap, RectangleInsetIsSmallerRectangle) {
  const ClearanceMap map(box(7, 4, {300, -20}, 33));
  for (const double d : {0.01, 0.3, 1.0, 1.9, 1.99}) {
    const double area_cm2 = area(checked(map.inset(d)));
    EXPECT_LE(area_cm2, (7 - 2 * d) * (4 - 2 * d)) << d;
    EXPECT_GE(area_cm2, (7 - 2 * (d + error)) * (4 - 2 * (d + error)) - 1e-9) << d;
    EXPECT_EQ(map.pieces(d), 1);
  }
  EXPECT_TRUE(checked(map.inset(2)).empty());
  EXPECT_EQ(map.pieces(2), 0);
}

TEST(ClearanceMap, RectangleOutsetIsSteinersArea) {  // Steiner 1840: A + P d + pi d^2
  const ClearanceMap map(box(7, 4, {}, 12));
  for (const double d : {0.05, 0.5, 5.0, 40.0}) {
    const double area_cm2 = area(checked(map.outset(d)));
    const auto steiner = [](double r) { return 28 + 22 * r + pi * r * r; };
    EXPECT_GE(area_cm2, steiner(d)) << d;
    EXPECT_LE(area_cm2, steiner(d + error)) << d;
  }
}

TEST(ClearanceMap, NothingMovesByNothing) {
  const Region region = box(3, 2);
  const ClearanceMap map(region);
  EXPECT_EQ(map.inset(0).region, region);
  EXPECT_EQ(map.outset(0).region, region);
}

TEST(ClearanceMap, EmptyRegionIsSoundAndEmpty) {
  const ClearanceMap map(Region{});
  EXPECT_TRUE(map.sound());
  EXPECT_TRUE(checked(map.inset(0.3)).empty());
  EXPECT_TRUE(checked(map.outset(5)).empty());
  EXPECT_FALSE(map.largest_circle());
  EXPECT_TRUE(map.necks(1).empty());
  EXPECT_EQ(map.unreached(0.3).area_cm2, 0);
}

TEST(ClearanceMap, CornersOfARectangleStayUnserved) {
  const double d = 0.5;
  const double band = 0.05;
  const double reach = d + band;
  // A corner's square, less the disc about the inset's corner: a chord and an arc of that disc.
  const double h = std::sqrt(reach * reach - d * d);
  const auto under_arc = [&](double u) {
    return 0.5 * (u * std::sqrt(reach * reach - u * u) + reach * reach * std::asin(u / reach));
  };
  const double corner = d * d - (h * d + under_arc(d) - under_arc(h));
  const Unreached unreached = ClearanceMap(box(6, 4, {}, 20)).unreached(d, band, 0.001);
  ASSERT_EQ(unreached.arms.size(), 4U);
  for (const Arm& arm : unreached.arms) EXPECT_NEAR(arm.area_cm2, corner, 0.003);
  EXPECT_NEAR(unreached.area_cm2, 4 * corner, 0.01);
  EXPECT_GE(unreached.area_cm2, 4 * corner);
}

TEST(ClearanceMap, NarrowArmIsUnservedBeyondReach) {
  OutlineMaker maker(7);
  const Region region{{maker.armed_blob(2, 0.4, 3), {}}};
  const Unreached unreached = ClearanceMap(region).unreached(0.3);
  ASSERT_FALSE(unreached.arms.empty());
  const Arm& arm = unreached.arms.front();
  EXPECT_NEAR(arm.width_cm, 0.4, 0.005);
  EXPECT_NEAR(arm.area_cm2, 0.4 * 3, 0.15);  // less the disc about its mouth, more at its root
  EXPECT_LE(area(subtract(arm.region, region)), 1e-3);
}

TEST(ClearanceMap, WholeWoundIsUnservedWhereNoDiscFits) {
  const Region region = annulus(2, 1.6);
  const Unreached unreached = ClearanceMap(region).unreached(0.3);
  EXPECT_NEAR(unreached.area_cm2, area(region), 0.03);
  ASSERT_EQ(unreached.arms.size(), 1U);
  EXPECT_NEAR(unreached.arms.front().width_cm, 0.4, 0.005);
}

TEST(ClearanceMap, CorridorExactlyTwiceTheInsetIsNoWayThrough) {
  OutlineMaker maker(1);
  for (const double d : {0.1, 0.3, 0.5}) {
    const Region region{{turned(maker.dumbbell(2, 2 * d, 1.5), 17), {}}};
    const ClearanceMap map(region);
    EXPECT_EQ(map.pieces(d), 2);
    EXPECT_EQ(checked(map.inset(d)).size(), 2U);
    EXPECT_EQ(map.pieces(d - 0.01), 1);
    EXPECT_EQ(checked(map.inset(d - 0.01)).size(), 1U);
  }
}

TEST(ClearanceMap, NeckTellsItsWidthPlaceAndLobe) {
  OutlineMaker maker(1);
  Ring ring = maker.dumbbell(2, 0.4, 1);
  for (Point& p : ring)
    if (p.x > 2.5) p.x += 1;  // the right part is 3 by 2, or so: the corridor is longer by 1
  const ClearanceMap map(Region{{ring, {}}});
  const auto necks = map.necks(0.5);
  ASSERT_EQ(necks.size(), 1U);
  const Neck& neck = necks.front();
  EXPECT_NEAR(neck.width_cm, 0.4, 0.003);
  EXPECT_NEAR(distance(neck.across.from, neck.across.to), 0.4, 0.003);
  EXPECT_GT(neck.across.from.x, 1.9);
  EXPECT_LT(neck.across.from.x, 4.1);
  EXPECT_GE(neck.lobe_area_cm2, 4 - 0.01);
  EXPECT_LE(neck.lobe_area_cm2, 4 + 0.4 * 1 + 0.01);  // half of what lies between at most
  EXPECT_NEAR(neck.lobe_width_cm, 2, 0.01);
  EXPECT_TRUE(map.necks(0.39).empty());
}

TEST(ClearanceMap, LobesOfAChainEachCountWhatHangsOnThem) {
  // Squares of 2 cm in a row, joined by necks of 0.2, 0.3 and 0.4 cm.
  const auto side = [](double sign) {
    Ring half;
    const double widths[] = {0.2, 0.3, 0.4};
    for (int i = 0; i < 4; ++i) {
      const double x = 2.1 * i;
      half.push_back({x, sign});
      half.push_back({x + 2, sign});
      if (i == 3) break;
      half.push_back({x + 2, sign * 0.5 * widths[i]});
      half.push_back({x + 2.1, sign * 0.5 * widths[i]});
    }
    return half;
  };
  Ring ring = side(-1);
  const Ring top = side(1);
  ring.insert(ring.end(), top.rbegin(), top.rend());
  const auto necks = ClearanceMap(Region{{ring, {}}}).necks(1);
  ASSERT_EQ(necks.size(), 3U);
  EXPECT_NEAR(necks[0].width_cm, 0.2, 0.003);
  EXPECT_NEAR(necks[0].lobe_area_cm2, 4, 0.05);
  EXPECT_NEAR(necks[1].lobe_area_cm2, 8, 0.08);
  EXPECT_NEAR(necks[2].lobe_area_cm2, 4, 0.05);
}

TEST(ClearanceMap, LargestCircleIsExactAndTrue) {
  EXPECT_NEAR(ClearanceMap(box(7, 4, {50, 2}, 71)).largest_circle()->radius_cm, 2, 1e-5);
  // A right triangle's inscribed circle: half of legs less hypotenuse.
  const ClearanceMap triangle(Region{{Ring{{0, 0}, {4, 0}, {0, 3}}, {}}});
  EXPECT_NEAR(triangle.largest_circle()->radius_cm, 1, 1e-5);
  EXPECT_NEAR(triangle.largest_circle()->centre.x, 1, 1e-4);
  EXPECT_NEAR(ClearanceMap(annulus(3, 1)).largest_circle()->radius_cm, 1, 3e-3);
}

TEST(ClearanceMap, IslandIsKeptClearAndClosedOver) {
  const ClearanceMap map(annulus(3, 1));
  const Region inset = checked(map.inset(0.4));
  ASSERT_EQ(inset.size(), 1U);
  ASSERT_EQ(inset.front().holes.size(), 1U);
  EXPECT_NEAR(area(inset), pi * (2.6 * 2.6 - 1.4 * 1.4), 0.15);
  EXPECT_EQ(checked(map.outset(0.9)).front().holes.size(), 1U);
  EXPECT_TRUE(checked(map.outset(1.01)).front().holes.empty());
}

TEST(ClearanceMap, WoundsGrowTogetherWhenTheirBordersMeet) {
  Region two = box(2, 2);
  two.push_back(box(2, 2, {8, 0}).front());
  const ClearanceMap map(two);
  EXPECT_EQ(checked(map.outset(2.99)).size(), 2U);
  EXPECT_EQ(checked(map.outset(3.01)).size(), 1U);
  EXPECT_EQ(checked(map.inset(0.5)).size(), 2U);
}

TEST(ClearanceMap, ThinsDenseOutlinesAndSaysByHowMuch) {
  const Region region{{circle(10, {}, 20000), {}}};
  const ClearanceMap map(region);
  EXPECT_GT(map.stray_cm(), 0);
  EXPECT_LE(map.stray_cm(), tolerance::thinning_cm + tolerance::grid_cm);
  EXPECT_NEAR(area(checked(map.inset(0.5))), pi * 4.5 * 4.5, 2 * pi * 4.5 * error);
  EXPECT_NEAR(map.largest_circle()->radius_cm, 5, 2e-3);
  EXPECT_LE(ClearanceMap(region, 0).stray_cm(), tolerance::grid_cm);
}

TEST(ClearanceMap, CrossingOutlineIsDoubtedNotDrawn) {
  const Region bow{{Ring{{0, 0}, {4, 3}, {4, 0}, {0, 3}, {-1, 1}}, {}}};
  const ClearanceMap map(bow);
  EXPECT_FALSE(map.sound());
  EXPECT_FALSE(map.doubt().empty());
  const Offset inset = map.inset(0.3);
  EXPECT_FALSE(inset.verified);
  EXPECT_EQ(inset.doubt, map.doubt());
  EXPECT_TRUE(inset.region.empty());
  EXPECT_THROW(map.largest_circle(), std::logic_error);
  EXPECT_THROW(map.necks(1), std::logic_error);
  EXPECT_THROW(map.unreached(0.3), std::logic_error);
}

TEST(ClearanceMap, ErrorFinerThanTheGridIsDoubted) {
  EXPECT_FALSE(ClearanceMap(box(3, 2)).inset(0.3, 1e-6).verified);
}

TEST(ClearanceMap, RejectsArgumentsOutsideTheirDomain) {
  const ClearanceMap map(box(3, 2));
  const double nan = std::nan("");
  EXPECT_THROW(map.inset(-0.1), std::invalid_argument);
  EXPECT_THROW(map.inset(nan), std::invalid_argument);
  EXPECT_THROW(map.outset(1, 0), std::invalid_argument);
  EXPECT_THROW(map.unreached(0), std::invalid_argument);
  EXPECT_THROW(map.unreached(0.3, -1), std::invalid_argument);
  EXPECT_THROW(ClearanceMap(box(3, 2), -1), std::invalid_argument);
  EXPECT_THROW(ClearanceMap(box(3, 2), nan), std::invalid_argument);
  EXPECT_THROW(ClearanceMap(Region{{Ring{{0, 0}, {1, 0}}, {}}}), std::invalid_argument);
  EXPECT_THROW(ClearanceMap(Region{{Ring{{0, 0}, {1, nan}, {1, 1}}, {}}}), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::geometry
