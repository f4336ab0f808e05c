// Times the whole plan, and each geometric step, beside the same steps done with GEOS in the same
// run, for outlines of 50, 500 and 5,000 corner points.
//
//   plan_bench [REPEATS]
//
// Prints the best time of each in microseconds and their ratio: ours / GEOS, so that below 1 we are
// faster. The best of many is the least disturbed by whatever else the machine does. The reference
// for the plan is what it cannot do without: inset, border, the film's reach around the filler and
// the largest circle.

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <limits>

#include "core/dressing/plan.h"
#include "core/geometry/circle.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/geometry/rectangle.h"
#include "core/geometry/validity.h"
#include "tests/support/geos_shape.h"

namespace {

using namespace drapewright;
using support::GeosShape;

constexpr double inset_cm = 0.3;
constexpr double border_cm = 5;
// As fine as this program's own: the chord error of a border of 5 cm stays under 0.005 cm.
constexpr int quarter_segments = 18;

/// A hand-drawn wound of about 9 x 7 cm: a few slow waves, and a tremor of 0.02 cm.
geometry::Ring traced(int points) {
  geometry::Ring ring;
  for (int i = 0; i < points; ++i) {
    const double t = 2 * geometry::pi * i / points;
    const double radius = 4 + 0.6 * std::sin(2 * t + 0.4) + 0.35 * std::sin(3 * t) +
                          0.15 * std::sin(7 * t + 1) + 0.02 * std::sin(37 * t) * std::sin(11 * t);
    ring.push_back({radius * std::cos(t) * 1.1, radius * std::sin(t) * 0.9});
  }
  return ring;
}

double best_us(int repeats, const std::function<void()>& work) {
  double best = std::numeric_limits<double>::infinity();
  for (int i = 0; i < repeats; ++i) {
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - start;
    best = std::min(best, took.count());
  }
  return best;
}

void compare(const char* step, int points, int repeats, const std::function<void()>& ours,
             const std::function<void()>& theirs) {
  const double our_us = best_us(repeats, ours);
  const double their_us = best_us(repeats, theirs);
  std::printf("%-28s %6d %12.0f %12.0f %8.2f\n", step, points, our_us, their_us, our_us / their_us);
}

volatile double sink = 0;

void bench(int points, int repeats) {
  const geometry::Region region = geometry::tidy({traced(points), {}}).region;
  const GeosShape shape(region);
  const geometry::Region filler = geometry::inset(region, inset_cm).region;
  const auto corner_points = geometry::outer_points(region);

  compare(
      "area and edge length", points, repeats,
      [&] { sink = geometry::area(region) + geometry::edge_length(region); },
      [&] { sink = shape.area() + shape.edge_length(); });
  compare(
      "validity", points, repeats,
      [&] { sink = geometry::find_fault(region[0].outer, 100) ? 1 : 0; },
      [&] { sink = shape.is_valid() ? 1 : 0; });
  compare(
      "inset 0.3 cm", points, repeats, [&] { geometry::inset(region, inset_cm); },
      [&] { shape.buffered(-inset_cm, quarter_segments); });
  compare(
      "border 5 cm", points, repeats, [&] { geometry::outset(region, border_cm); },
      [&] { shape.buffered(border_cm, quarter_segments); });
  compare(
      "largest circle", points, repeats, [&] { geometry::largest_inscribed_circle(filler); },
      [&] { sink = GeosShape(filler).inscribed_radius(1e-3); });
  compare(
      "difference", points, repeats, [&] { geometry::subtract(region, filler); },
      [&] { (void)(shape - GeosShape(filler)); });

  wound::Case value;
  value.label = "bench";
  value.cautions.reviewed = true;
  value.assessments.push_back({.date = "2026-01-01"});
  value.current().wounds.push_back({.id = "A", .outline_cm = traced(points), .depth_cm = 1.5});
  compare(
      "whole plan", points, repeats, [&] { dressing::plan_dressing(value); },
      [&] {
        const GeosShape cut = shape.buffered(-inset_cm, quarter_segments);
        const GeosShape film = shape.buffered(border_cm, quarter_segments);
        const GeosShape left = shape - cut.buffered(inset_cm + 0.05, quarter_segments);
        sink = cut.inscribed_radius(1e-3) + film.area() + left.area();
      });
}

}  // namespace

int main(int argc, char** argv) {
  const int repeats = argc > 1 ? std::max(1, std::atoi(argv[1])) : 20;
  std::printf("%-28s %6s %12s %12s %8s\n", "step", "points", "ours us", "GEOS us", "ratio");
  for (const int points : {50, 500, 5000}) bench(points, points > 1000 ? repeats / 4 + 1 : repeats);
}
