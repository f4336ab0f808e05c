#include "tests/bench/bench_cases.h"

#include <cmath>
#include <string>
#include <utility>

#include "core/geometry/shapes.h"
#include "tests/support/made_outlines.h"

namespace drapewright::bench {
namespace {

wound::Case empty_case() {
  wound::Case value;
  value.label = "bench";
  value.cautions.reviewed = true;
  value.assessments.push_back({.date = "2026-01-01"});
  return value;
}

}  // namespace

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

geometry::Ring traced_from_pixels(int points) {
  return support::OutlineMaker(31).staircase(points, 4);
}

wound::Case case_of(geometry::Ring outline, double depth_cm) {
  wound::Case value = empty_case();
  value.current().wounds.push_back(
      {.id = "A", .outline_cm = std::move(outline), .depth_cm = depth_cm});
  return value;
}

wound::Case case_of_many(int wounds, double spacing_cm) {
  constexpr int corners = 60;
  wound::Case value = empty_case();
  const int in_row = static_cast<int>(std::ceil(std::sqrt(wounds)));
  for (int i = 0; i < wounds; ++i) {
    geometry::Ring outline = traced(corners);
    for (geometry::Point& p : outline) p = 0.12 * p;
    const geometry::Point place{spacing_cm * (i % in_row), spacing_cm * (i / in_row)};
    value.current().wounds.push_back({.id = "W" + std::to_string(i),
                                      .outline_cm = geometry::moved(std::move(outline), place),
                                      .depth_cm = 1});
  }
  return value;
}

}  // namespace drapewright::bench
