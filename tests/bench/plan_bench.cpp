// Times each geometric step, and whole plans, beside the same steps done with GEOS in the same run.
//
//   plan_bench [REPEATS]          invented outlines of 50 to 20,000 corner points, many wounds
//   plan_bench REPEATS FOLDER     the outlines and cases in a folder
//
// Prints the best processor time of each and their ratio: ours / GEOS, so that below 1 we are
// faster. The best of many is the least disturbed by whatever else the machine does. A whole plan
// is measured against no more than an inset of 0.3 cm and outsets of 4 and 5 cm.

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <functional>

#include "core/geometry/circle.h"
#include "core/geometry/measures.h"
#include "core/geometry/offset.h"
#include "core/geometry/overlay.h"
#include "core/geometry/rectangle.h"
#include "core/geometry/validity.h"
#include "tests/bench/bench_cases.h"
#include "tests/bench/stopwatch.h"
#include "tests/bench/whole_plans.h"
#include "tests/support/geos_shape.h"

namespace {

using namespace drapewright;
using support::GeosShape;

constexpr double inset_cm = 0.3;
constexpr double border_cm = 5;
// As fine as this program's own: the chord error of a border of 5 cm stays under 0.005 cm.
constexpr int quarter_segments = 18;

void compare(const char* step, int points, int repeats, const std::function<void()>& ours,
             const std::function<void()>& theirs) {
  const bench::Pair best = bench::best_of(repeats, ours, theirs);
  std::printf("%-28s %6d %12.0f %12.0f %8.2f\n", step, points, best.ours_us, best.theirs_us,
              best.ratio());
}

volatile double sink = 0;

void bench_steps(int points, int repeats) {
  const geometry::Region region = geometry::tidy({bench::traced(points), {}}).region;
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
}

}  // namespace

int main(int argc, char** argv) {
  const int repeats = argc > 1 ? std::max(1, std::atoi(argv[1])) : 20;
  if (argc > 2) return bench::bench_folder(argv[2], repeats) ? 0 : 1;
  std::printf("%-28s %6s %12s %12s %8s\n", "step", "points", "ours us", "GEOS us", "ratio");
  for (const int points : {50, 500, 5000, 20000}) {
    bench_steps(points, points > 1000 ? repeats / 4 + 1 : repeats);
  }
  bench::bench_whole_plans(repeats);
}
