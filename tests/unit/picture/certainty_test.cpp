#include "core/picture/certainty.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <random>

#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "tests/support/drawn_camera.h"

namespace drapewright::picture {
namespace {

using support::DrawnCamera;

TEST(Spread, OfAScaleIsTwoClicksInItsLength) {
  const KnownLength ruler{.from = {0, 0}, .to = {400, 300}, .length_cm = 10};
  const PixelChain outline{{0, 0}, {100, 0}, {100, 100}, {0, 100}};
  const Spread spread = spread_at(ruler, 1, outline);
  EXPECT_NEAR(spread.length_share, 2.0 / 500, 1e-6);
  EXPECT_NEAR(spread.area_share, 4.0 / 500, 1e-6);
  EXPECT_NEAR(spread.cm_per_pixel, 0.02, 1e-9);
  EXPECT_NEAR(spread_at(ruler, 2.5, outline).area_share, 10.0 / 500, 1e-6);
  EXPECT_EQ(in_words(spread), "lengths ± 0.4 %, area ± 0.8 %");
}

KnownSquare square_seen_by(const DrawnCamera& camera, geometry::Point at, double side) {
  const geometry::Ring ring = geometry::rectangle(side, side, at);
  KnownSquare out{.side_cm = side};
  for (std::size_t i = 0; i < 4; ++i) out.corners[i] = camera.see(ring[i]);
  return out;
}

/// The share by which area and greatest length change when every corner is moved by a pixel, in
/// directions drawn at random: never more than the spread, and somewhere near it.
TEST(Spread, BoundsWhatRandomClicksDo) {
  std::mt19937 random(3);
  std::uniform_real_distribution<double> angle(0, 2 * geometry::pi);
  const geometry::Ring wound = geometry::ellipse(9, 6, {7, 0});
  for (const double tilt : {0.0, 20.0, 45.0}) {
    const DrawnCamera camera{.tilt_deg = tilt, .towards_deg = 30};
    const KnownSquare square = square_seen_by(camera, {-2, 0}, 5);
    const PixelChain outline = camera.see(wound);
    const Spread spread = spread_at(square, 1, outline);
    const double area = geometry::area(Calibration(square).to_cm(outline));
    double worst = 0;
    for (int round = 0; round < 400; ++round) {
      KnownSquare moved = square;
      for (Pixel& corner : moved.corners) {
        const double turn = angle(random);
        corner = {corner.x + std::cos(turn), corner.y + std::sin(turn)};
      }
      const double off = std::fabs(geometry::area(Calibration(moved).to_cm(outline)) / area - 1);
      EXPECT_LE(off, 1.1 * spread.area_share);  // a tenth for what the first order leaves out
      worst = std::max(worst, off);
    }
    EXPECT_GT(worst, 0.6 * spread.area_share) << tilt;
    EXPECT_GT(spread.length_share, 0.3 * spread.area_share);
  }
}

TEST(Spread, GrowsAwayFromASmallSquare) {
  const DrawnCamera camera{.tilt_deg = 20};
  const KnownSquare square = square_seen_by(camera, {0, 0}, 2);
  const auto at = [&](double x) {
    return spread_at(square, 1, camera.see(geometry::circle(4, {x, 0}))).area_share;
  };
  EXPECT_GT(at(6), 2 * at(0));
  EXPECT_GT(at(12), 1.5 * at(6));
}

TEST(LengthCheck, ShowsTheDifferenceAndWhatClicksExplain) {
  const KnownLength ruler{.from = {0, 0}, .to = {500, 0}, .length_cm = 10};
  const LengthCheck good =
      check_length(ruler, 1, {.from = {0, 90}, .to = {251, 90}, .length_cm = 5});
  EXPECT_NEAR(good.measured_cm, 5.02, 1e-9);
  EXPECT_NEAR(good.clicks_share, 2.0 / 500 + 2.0 / 251, 1e-6);
  EXPECT_TRUE(good.agrees());
  const LengthCheck bad =
      check_length(ruler, 1, {.from = {0, 90}, .to = {300, 90}, .length_cm = 5});
  EXPECT_FALSE(bad.agrees());
  EXPECT_EQ(in_words(bad), "5 cm measures 6.0 cm: + 20.0 %, of which clicks explain 1.1 %");
}

}  // namespace
}  // namespace drapewright::picture
