#include "core/picture/calibration.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <random>

#include "core/base/error.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"
#include "tests/support/drawn_camera.h"

namespace drapewright::picture {
namespace {

using geometry::Point;
using support::DrawnCamera;

KnownSquare square_seen_by(const DrawnCamera& camera, Point at, double side, double turn_deg = 0) {
  const geometry::Ring ring = geometry::rectangle(side, side, at, turn_deg);
  KnownSquare out{.side_cm = side};
  for (std::size_t i = 0; i < 4; ++i) out.corners[i] = camera.see(ring[i]);
  return out;
}

/// 20 views: tilts up to 57 degrees, to all sides, rolled all round.
std::vector<DrawnCamera> views() {
  std::vector<DrawnCamera> out;
  for (int i = 0; i < 20; ++i) {
    out.push_back({.tilt_deg = 3.0 * i, .towards_deg = 67.0 * i, .roll_deg = 41.0 * i});
  }
  return out;
}

/// A wound-like outline about 12 x 7 cm, whose radius is known at each angle.
geometry::Ring lobed() {
  geometry::Ring out;
  for (int i = 0; i < 240; ++i) {
    const double t = geometry::radians(1.5 * i), r = 4.5 + std::cos(2 * t) + 0.4 * std::sin(5 * t);
    out.push_back({2 + r * std::cos(t), -1 + r * std::sin(t)});
  }
  return out;
}

TEST(Calibration, TakesOutTheTiltOfTwentyViews) {
  const geometry::Ring outline = lobed();
  for (const DrawnCamera& camera : views()) {
    const Calibration calibration(square_seen_by(camera, {-7, 3}, 5, 20));
    const geometry::Ring measured = calibration.to_cm(camera.see(outline));
    EXPECT_NEAR(geometry::area(measured), geometry::area(outline), 1e-6) << camera.tilt_deg;
    for (std::size_t i = 1; i < outline.size(); i += 17) {
      EXPECT_NEAR(distance(measured[0], measured[i]), distance(outline[0], outline[i]), 1e-7);
    }
    // Not mirrored: going round keeps its sense.
    EXPECT_GT(geometry::signed_area(measured), 0);
  }
}

TEST(Calibration, OfWholePixelsKeepsAreaWithinAPercentAndTwentyCmWithinHalfAMillimetre) {
  const geometry::Ring outline = lobed();
  const auto rounded = [](Pixel p) { return Pixel{std::floor(p.x) + 0.5, std::floor(p.y) + 0.5}; };
  for (const DrawnCamera& camera : views()) {
    KnownSquare square = square_seen_by(camera, {0, 0}, 10);
    std::ranges::transform(square.corners, square.corners.begin(), rounded);
    PixelChain seen = camera.see(outline);
    std::ranges::transform(seen, seen.begin(), rounded);
    const Calibration calibration(square);
    EXPECT_NEAR(geometry::area(calibration.to_cm(seen)) / geometry::area(outline), 1, 0.01)
        << camera.tilt_deg;
    const Point left = calibration.to_cm(rounded(camera.see({-10, 0})));
    const Point right = calibration.to_cm(rounded(camera.see({10, 0})));
    EXPECT_NEAR(distance(left, right), 20, 0.05) << camera.tilt_deg;
  }
}

TEST(Calibration, TakesCornersInAnyOrder) {
  const DrawnCamera camera{.tilt_deg = 35, .towards_deg = 110, .roll_deg = 250};
  KnownSquare square = square_seen_by(camera, {1, 2}, 5);
  const Pixel place = camera.see({4, -3});
  const Point expected = Calibration(square).to_cm(place);
  std::ranges::sort(square.corners, {}, &Pixel::x);
  do {
    const Point point = Calibration(square).to_cm(place);
    EXPECT_NEAR(distance(point, expected), 0, 1e-9);
  } while (std::ranges::next_permutation(square.corners, {}, &Pixel::x).found);
}

TEST(Calibration, ComesBackToThePixel) {
  for (const DrawnCamera& camera : views()) {
    const Calibration calibration(square_seen_by(camera, {0, 0}, 5));
    for (const Pixel p : {Pixel{1200, 900}, Pixel{2000, 1500}, Pixel{2900, 2000}}) {
      const Pixel back = calibration.to_pixel(calibration.to_cm(p));
      EXPECT_NEAR(back.x, p.x, 1e-6);
      EXPECT_NEAR(back.y, p.y, 1e-6);
    }
  }
}

TEST(Calibration, DrawsUpWhatIsUpInThePicture) {
  for (const DrawnCamera& camera : views()) {
    const KnownSquare square = square_seen_by(camera, {0, 0}, 5);
    const Calibration calibration(square);
    const Pixel middle = calibration.to_pixel({0, 0});
    const Point up = calibration.to_cm({middle.x, middle.y - 0.01});
    EXPECT_NEAR(up.x, 0, 1e-7);
    EXPECT_GT(up.y, 0);
  }
}

TEST(Calibration, ByTwoPlacesIsAScale) {
  const Calibration calibration(
      KnownLength{.from = {100, 200}, .to = {400, 600}, .length_cm = 10});  // 500 px
  EXPECT_FALSE(calibration.takes_out_tilt());
  const Point p = calibration.to_cm({250, 350});
  EXPECT_NEAR(p.x, 0, 1e-12);
  EXPECT_NEAR(p.y, 1, 1e-12);
  EXPECT_NEAR(calibration.cm_per_pixel({0, 0}), 0.02, 1e-12);
}

TEST(Calibration, OfATiltedPictureByTwoPlacesShortensAsTheCosine) {
  // From so far away that nothing but the tilt is left.
  const DrawnCamera camera{.tilt_deg = 30, .distance_cm = 4e4, .focal_px = 3e6};
  const Calibration calibration(
      KnownLength{.from = camera.see({0, -5}), .to = camera.see({0, 5}), .length_cm = 10});
  const double along_slope =
      distance(calibration.to_cm(camera.see({-5, 0})), calibration.to_cm(camera.see({5, 0})));
  EXPECT_NEAR(along_slope, 10 * std::cos(geometry::radians(30)), 1e-3);
}

TEST(Calibration, SaysHowLargeAPixelIs) {
  const DrawnCamera camera;  // square on: 40 cm away, 3000 px
  EXPECT_NEAR(Calibration(square_seen_by(camera, {0, 0}, 5)).cm_per_pixel(camera.see({9, 3})),
              40.0 / 3000, 1e-9);
  // At a slant a pixel is longest along the slope.
  const DrawnCamera slanted{.tilt_deg = 60};
  EXPECT_NEAR(Calibration(square_seen_by(slanted, {0, 0}, 5)).cm_per_pixel(slanted.see({0, 0})),
              2 * 40.0 / 3000, 1e-9);
}

TEST(Calibration, RefusesPlacesAtTheHorizon) {
  const DrawnCamera camera{.tilt_deg = 60, .towards_deg = 90};
  const Calibration calibration(square_seen_by(camera, {0, 0}, 5));
  // The horizon is 30 degrees above the middle.
  const double horizon = 1500 + 3000 * std::tan(geometry::radians(30));
  EXPECT_THROW(calibration.to_cm({2000, horizon + 1}), InputError);
  EXPECT_THROW(calibration.to_cm({2000, horizon - 100}), InputError);
  EXPECT_NO_THROW(calibration.to_cm({2000, 2000}));
  EXPECT_THROW(calibration.to_pixel({0, 1000}), InputError);
}

}  // namespace
}  // namespace drapewright::picture
