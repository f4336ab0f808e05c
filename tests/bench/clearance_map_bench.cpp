// One inset and two outsets, by a clearance map and by GEOS, in one run: `ratio` is ours to theirs,
// each the least of the times taken in turn. A second ratio adds the largest circle, the necks and
// the unserved arms on our side only.

#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <limits>

#include "core/geometry/medial/clearance_map.h"
#include "core/geometry/shapes.h"
#include "tests/support/geos_shape.h"
#include "tests/support/made_outlines.h"

namespace drapewright {
namespace {

using geometry::ClearanceMap;
using geometry::Region;
using support::GeosShape;

constexpr int chords = 18;  ///< of GEOS, to a quarter circle: 72 round a point

double seconds(const auto& work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

enum Kind { staircase, blob, star };

Region outline(Kind kind, int points) {
  support::OutlineMaker maker(31);
  switch (kind) {
    case staircase:
      return {{maker.staircase(points, 6), {}}};
    case blob:
      return {{maker.blob(points, 5), {}}};
    default:
      return {{maker.star(points / 2, 6), {}}};
  }
}

void offsets_beside_geos(benchmark::State& state) {
  const Region region =
      outline(static_cast<Kind>(state.range(0)), static_cast<int>(state.range(1)));
  double ours = std::numeric_limits<double>::infinity();
  double all = ours;
  double theirs = ours;
  for (auto _ : state) {
    ours = std::min(ours, seconds([&] {
                      const ClearanceMap map(region);
                      benchmark::DoNotOptimize(map.inset(0.3));
                      benchmark::DoNotOptimize(map.outset(4));
                      benchmark::DoNotOptimize(map.outset(5));
                    }));
    all = std::min(all, seconds([&] {
                     const ClearanceMap map(region);
                     benchmark::DoNotOptimize(map.inset(0.3));
                     benchmark::DoNotOptimize(map.outset(4));
                     benchmark::DoNotOptimize(map.outset(5));
                     benchmark::DoNotOptimize(map.largest_circle());
                     benchmark::DoNotOptimize(map.necks(0.5));
                     benchmark::DoNotOptimize(map.unreached(0.3));
                   }));
    theirs = std::min(theirs, seconds([&] {
                        const GeosShape shape(region);
                        benchmark::DoNotOptimize(shape.buffered(-0.3, chords));
                        benchmark::DoNotOptimize(shape.buffered(4, chords));
                        benchmark::DoNotOptimize(shape.buffered(5, chords));
                      }));
  }
  state.counters["ours_ms"] = 1e3 * ours;
  state.counters["all_ms"] = 1e3 * all;
  state.counters["geos_ms"] = 1e3 * theirs;
  state.counters["ratio"] = ours / theirs;
  state.counters["ratio_all"] = all / theirs;
  state.counters["us_per_point"] = 1e6 * ours / static_cast<double>(state.range(1));
}

// Stars stop at 500 points: at 5,000 GEOS takes minutes for the two outsets.
BENCHMARK(offsets_beside_geos)
    ->ArgNames({"kind", "points"})
    ->ArgsProduct({{staircase, blob}, {50, 500, 5000, 20000}})
    ->ArgsProduct({{star}, {50, 500}})
    ->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace drapewright
