// Whether a sheet holds a shape, beside trying a thousand angles.

#include <gtest/gtest.h>

#include <cmath>

#include "core/base/tolerances.h"
#include "core/geometry/measures.h"
#include "core/geometry/rectangle.h"
#include "core/geometry/shapes.h"
#include "tests/support/made_outlines.h"

namespace drapewright::geometry {
namespace {

double extent(const Ring& ring, double angle) {
  double low = 1e9, high = -1e9;
  for (const Point p : ring) {
    const double along = p.x * std::cos(angle) + p.y * std::sin(angle);
    low = std::min(low, along);
    high = std::max(high, along);
  }
  return high - low;
}

/// By how much the sheet is too large in its tighter direction, at the best of the angles tried: a
/// lower bound. At a fixed angle the shape may be shifted freely, so positions need no trying.
double tried_spare(const Ring& ring, double length, double width) {
  double best = -1e9;
  for (int i = 0; i < 1000; ++i) {
    const double angle = pi * i / 1000;
    best = std::max(best,
                    std::min(length - extent(ring, angle), width - extent(ring, angle + pi / 2)));
  }
  return best;
}

TEST(SheetFit, AgreesWithTryingAThousandAngles) {
  support::OutlineMaker maker(41);
  int held = 0, refused = 0;
  for (int i = 0; i < 300; ++i) {
    const Ring ring = maker.blob(maker.whole(5, 40), 4);
    const double length = maker.between(6, 10), width = maker.between(5, 10);
    const double spare = tried_spare(ring, length, width);
    const auto place = place_in_rectangle(ring, length, width, tolerance::sheet_fit_cm);
    if (spare >= 0) {
      EXPECT_TRUE(place) << i;
    }
    // Half a step of the angles moves an extent of 12 cm by less than 0.02 cm.
    if (spare < -0.02) {
      EXPECT_FALSE(place) << i;
    }
    place ? ++held : ++refused;
    if (!place) continue;
    EXPECT_LE(extent(ring, radians(place->angle_deg)), place->length_cm + 1e-8);
    EXPECT_LE(extent(ring, radians(place->angle_deg) + pi / 2), place->width_cm + 1e-8);
  }
  EXPECT_GT(held, 50);
  EXPECT_GT(refused, 50);
}

TEST(SheetFit, FindsASheetWithNoMargin) {
  support::OutlineMaker maker(43);
  for (int i = 0; i < 100; ++i) {
    const double length = maker.between(2, 60), width = maker.between(1, 60);
    const Ring sheet = rectangle(length, width, {}, maker.between(0, 360));
    EXPECT_TRUE(place_in_rectangle(sheet, length, width, tolerance::sheet_fit_cm)) << i;
    EXPECT_FALSE(place_in_rectangle(sheet, length - 1e-6, width, tolerance::sheet_fit_cm)) << i;
  }
}

}  // namespace
}  // namespace drapewright::geometry
