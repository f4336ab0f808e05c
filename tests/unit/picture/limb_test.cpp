#include "core/picture/limb.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "core/base/error.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "core/picture/certainty.h"
#include "tests/support/drawn_camera.h"

namespace drapewright::picture {
namespace {

using geometry::pi;
using geometry::Point;

/// 100 px to the cm; the drawing's origin at (1000, 1000).
const KnownLength ruler{.from = {500, 1000}, .to = {1500, 1000}, .length_cm = 10};
constexpr Pixel middle{1000, 1000};
constexpr double radius = 5;

LimbView upright(std::optional<double> camera_distance = {}) {
  return {.axis_from = {1000, 0},
          .axis_to = {1000, 2000},
          .girth_cm = 2 * pi * radius,
          .camera_distance_cm = camera_distance};
}

TEST(Limb, FromFarAwayIsTheArcSine) {
  const Limb limb(upright(), Calibration(ruler), middle);
  for (const double x : {-4.9, -2.5, 0.0, 1.0, 4.0}) {
    const Point p = limb.unrolled(Point{x, 3});
    EXPECT_NEAR(p.x, radius * std::asin(x / radius), 1e-9);
    EXPECT_NEAR(p.y, 3, 1e-9);
  }
}

TEST(Limb, UnrollsARectangleInClosedForm) {
  const Limb limb(upright(), Calibration(ruler), middle);
  const UnrolledDifference difference = unrolled_difference(limb, geometry::rectangle(6, 4));
  const double width = 2 * radius * std::asin(3 / radius);
  EXPECT_NEAR(difference.unrolled_width_cm, width, 1e-9);
  EXPECT_NEAR(difference.unrolled_area_cm2, 4 * width, 1e-6);
  EXPECT_NEAR(difference.area_share(), width / 6 - 1, 1e-6);
  EXPECT_NEAR(difference.farthest_deg, geometry::degrees(std::asin(0.6)), 1e-6);
  EXPECT_EQ(in_words(difference),
            "unrolled: area + 7.3 %, width across the limb + 7.3 %; it reaches 37 degrees round");
}

/// The disc of radius a round the axis unrolls to the area 4 times the integral of
/// sqrt(a2 - x2) / sqrt(1 - x2/r2) over 0..a, here by Simpson's rule over angles.
TEST(Limb, UnrollsADiscToTheIntegral) {
  const double a = 4;
  double integral = 0;
  const int steps = 2000;
  for (int i = 0; i <= steps; ++i) {
    const double t = pi / 2 * i / steps, x = a * std::sin(t);
    const double f = a * a * std::cos(t) * std::cos(t) / std::sqrt(1 - x * x / (radius * radius));
    integral += f * (i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2);
  }
  integral *= pi / 2 / steps / 3;
  const Limb limb(upright(), Calibration(ruler), middle);
  EXPECT_NEAR(geometry::area(limb.unrolled(geometry::circle(2 * a))), 4 * integral,
              0.002 * 4 * integral);
}

TEST(Limb, FollowsItsAxis) {
  LimbView slanted = upright();
  slanted.axis_from = {0, 2000};  // from lower left to upper right
  slanted.axis_to = {2000, 0};
  const Limb limb(slanted, Calibration(ruler), middle);
  const Point on_axis = limb.unrolled(Point{2, 2});
  EXPECT_NEAR(on_axis.x, 2, 1e-9);
  EXPECT_NEAR(on_axis.y, 2, 1e-9);
  const double across = 3, arc = radius * std::asin(across / radius);
  const Point p = limb.unrolled(Point{across / std::sqrt(2), -across / std::sqrt(2)});
  EXPECT_NEAR(p.x, arc / std::sqrt(2), 1e-9);
  EXPECT_NEAR(p.y, -arc / std::sqrt(2), 1e-9);
}

/// A cylinder seen by a camera nearby, place by place: what was drawn on its skin comes back.
TEST(Limb, FromNearbyFindsWhatWasDrawnOnTheSkin) {
  const double away = 40;
  const support::DrawnCamera camera{
      .distance_cm = away, .focal_px = 100 * away, .middle = {1000, 1000}};
  const Calibration calibration(KnownLength{
      .from = camera.see(Point{0, -5}), .to = camera.see(Point{0, 5}), .length_cm = 10});
  for (const double off : {0.0, 3.0}) {  // the camera over the axis, and beside it
    LimbView view = upright(away);
    view.axis_from = camera.see(Point{off, -8});
    view.axis_to = camera.see(Point{off, 8});
    const Limb limb(view, calibration, camera.middle);
    for (const double deg : {-50.0, -20.0, 0.0, 30.0, 55.0}) {
      const double angle = geometry::radians(deg);
      const Point seen = calibration.to_cm(
          camera.see(Point{off + radius * std::sin(angle), 4}, radius * (std::cos(angle) - 1)));
      const Point skin = limb.unrolled(seen);
      EXPECT_NEAR(skin.x, off + radius * angle, 1e-9) << deg;
      EXPECT_NEAR(skin.y, 4, 1e-9) << deg;
      EXPECT_NEAR(limb.turn_deg(seen), std::fabs(deg), 1e-7);
      const Point back = limb.flat(skin);
      EXPECT_NEAR(distance(back, seen), 0, 1e-9) << deg;
    }
  }
}

TEST(Limb, RefusesWhatLiesBeyondItsEdge) {
  const Limb far(upright(), Calibration(ruler), middle);
  EXPECT_NO_THROW(far.unrolled(Point{4.99, 0}));
  EXPECT_THROW(far.unrolled(Point{5.01, 0}), InputError);
  EXPECT_THROW(far.unrolled(geometry::rectangle(12, 2)), InputError);
  EXPECT_THROW(far.flat(Point{8, 0}), InputError);  // a quarter of the girth is 7.85
  // From nearby less of the limb is seen: up to cos = r / (r + distance).
  const Limb near(upright(15.0), Calibration(ruler), middle);
  const double edge = radius * std::acos(radius / 20);
  EXPECT_NO_THROW(near.flat(Point{edge - 0.01, 0}));
  EXPECT_THROW(near.flat(Point{edge + 0.01, 0}), InputError);
}

TEST(Limb, MakesClicksCountForMoreTowardsItsEdge) {
  const PixelChain edge{{1300, 900}, {1490, 900}, {1490, 1100}, {1300, 1100}};
  const auto unrolled_area = [&](const Calibration& by) {
    return geometry::area(Limb(upright(), by, middle).unrolled(by.to_cm(edge)));
  };
  EXPECT_GT(click_spread(ruler, 1, unrolled_area), 1.5 * spread_at(ruler, 1, edge).area_share);
}

}  // namespace
}  // namespace drapewright::picture
