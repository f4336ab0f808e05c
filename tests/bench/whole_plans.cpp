#include "tests/bench/whole_plans.h"

#include <chrono>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <stop_token>
#include <vector>

#include "core/base/error.h"
#include "core/dressing/plan.h"
#include "core/geometry/validity.h"
#include "tests/bench/bench_cases.h"
#include "tests/bench/stopwatch.h"
#include "tests/support/geos_shape.h"
#include "tests/support/made_outlines.h"
#include "tests/support/outline_files.h"

namespace drapewright::bench {
namespace {

using support::GeosShape;

constexpr double inset_cm = 0.3;
constexpr double outsets_cm[] = {4, 5};
/// As fine as this program's own: the chord error of a border of 5 cm stays under 0.005 cm.
constexpr int quarter_segments = 18;

/// What the plan is measured against: an inset and two outsets of every outline, nothing else.
void offset_by_geos(const std::vector<GeosShape>& shapes) {
  for (const GeosShape& shape : shapes) {
    (void)shape.buffered(-inset_cm, quarter_segments);
    for (const double by_cm : outsets_cm) (void)shape.buffered(by_cm, quarter_segments);
  }
}

std::vector<GeosShape> shapes_of(const wound::Case& value) {
  std::vector<GeosShape> shapes;
  for (const wound::Wound& wound : value.current().wounds) {
    shapes.emplace_back(geometry::tidy({wound.outline_cm, wound.islands_cm}).region);
  }
  return shapes;
}

Pair beside_geos(const wound::Case& value, int repeats) {
  const std::vector<GeosShape> shapes = shapes_of(value);
  return best_of(
      repeats, [&] { dressing::plan_dressing(value); }, [&] { offset_by_geos(shapes); });
}

/// The longest time of the plan between two questions whether it is still wanted.
double longest_silence_us(const wound::Case& value) {
  double last_us = now_us();
  double longest_us = 0;
  const auto asked = [&](double) {
    const double time_us = now_us();
    longest_us = std::max(longest_us, time_us - last_us);
    last_us = time_us;
  };
  dressing::plan_dressing(value, Progress({}, asked));
  asked(1);
  return longest_us;
}

void show(const char* what, const wound::Case& value, int repeats) {
  const Pair times = beside_geos(value, repeats);
  std::printf("%-34s %10.2f %10.2f %7.2f %10.1f\n", what, times.ours_us / 1e3,
              times.theirs_us / 1e3, times.ratio(), longest_silence_us(value) / 1e3);
  std::fflush(stdout);
}

/// Where GEOS takes minutes for its offsets and would keep the rows after it from being run.
void show_alone(const char* what, const wound::Case& value, int repeats) {
  double best_us = time_us([&] { dressing::plan_dressing(value); });
  for (int k = 1; k < repeats; ++k) {
    best_us = std::min(best_us, time_us([&] { dressing::plan_dressing(value); }));
  }
  std::printf("%-34s %10.2f %10s %7s %10.1f\n", what, best_us / 1e3, "not run", "",
              longest_silence_us(value) / 1e3);
  std::fflush(stdout);
}

/// By what power of n the time grew, and what n log n would have come to.
void show_growth(int from, double from_us, int to, double to_us) {
  const double n = static_cast<double>(to) / from;
  std::printf("  from %d to %d points: %.1f times as long; n log n would be %.1f\n", from, to,
              to_us / from_us, n * std::log(to) / std::log(from));
}

}  // namespace

void bench_whole_plans(int repeats) {
  std::printf("\n%-34s %10s %10s %7s %10s\n", "whole plan", "ours ms", "GEOS ms", "ratio",
              "silent ms");
  for (const int points : {50, 500, 5000, 20000}) {
    show(("traced, " + std::to_string(points) + " points").c_str(), case_of(traced(points)),
         points > 1000 ? repeats / 4 + 1 : repeats);
  }
  show_alone("staircase, 10000 points", case_of(traced_from_pixels(10000)), 2);
  show("200 wounds under one film", case_of_many(200, 3), 1);
  show("200 wounds, 4 films or more", case_of_many(200, 6.9), 1);
  show("64 wounds, 64 films", case_of_many(64, 12), 1);
  std::printf("\nStaircases, where no point can be thinned away:\n");
  double before_us = 0;
  int before = 0;
  for (const int points : {500, 2000, 8000}) {
    const wound::Case value = case_of(support::OutlineMaker(7).staircase(points, 30));
    double best_us = time_us([&] { dressing::plan_dressing(value); });
    best_us = std::min(best_us, time_us([&] { dressing::plan_dressing(value); }));
    if (before > 0) show_growth(before, before_us, points, best_us);
    before = points;
    before_us = best_us;
  }
}

bool bench_folder(const std::string& folder, int repeats) {
  std::vector<double> ratios, ours_us, theirs_us;
  for (const std::string& file : support::json_files(folder)) try {
      const Pair times = beside_geos(support::read_case_or_outline(file), repeats);
      ratios.push_back(times.ratio());
      ours_us.push_back(times.ours_us);
      theirs_us.push_back(times.theirs_us);
    } catch (const InputError& error) {
      std::printf("left out: %s\n", error.what());
    }
  if (ratios.empty()) return false;
  const double ours = median(ours_us);
  const double theirs = median(theirs_us);
  std::printf("\n%zu outlines, best of %d each: whole plan %.2f ms, GEOS %.2f ms (medians)\n",
              ratios.size(), repeats, ours / 1e3, theirs / 1e3);
  std::printf("median of the ratios %.2f, ratio of the medians %.2f, largest %.2f\n",
              median(ratios), ours / theirs, *std::ranges::max_element(ratios));
  return true;
}

}  // namespace drapewright::bench
