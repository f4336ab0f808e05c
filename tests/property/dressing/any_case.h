#pragma once

#include <gtest/gtest.h>
// rapidcheck's header needs GoogleTest's before it.
#include <rapidcheck/gtest.h>

#include "core/wound/case.h"
#include "tests/support/made_outlines.h"

namespace drapewright::support {

/// A star, blob, comb, spiral, staircase or a blob with an island near its edge, 2 to 12 cm.
inline geometry::Polygon any_outline() {
  OutlineMaker maker(*rc::gen::inRange<std::uint64_t>(0, 1'000'000'000).as("seed"));
  const int size = *rc::gen::inRange(5, 60).as("size");
  switch (*rc::gen::inRange(0, 6).as("kind")) {
    case 0:
      return {maker.star(size, maker.between(1, 6)), {}};
    case 1:
      return {maker.blob(size + 5, maker.between(1, 6)), {}};
    case 2:
      return {maker.comb(2 + size / 20, maker.between(0.3, 1.5), 0.4, 4), {}};
    case 3:
      return {maker.spiral(maker.between(0.5, 1.5), 1.2, 0.4, size + 80), {}};
    case 4:
      return {maker.staircase(4 * size, maker.between(1, 5)), {}};
    default:
      return maker.with_island(3, maker.between(0.1, 1), maker.between(0.05, 1));
  }
}

inline geometry::Ring square_at(geometry::Point from, double side) {
  return {from, {from.x + side, from.y}, {from.x + side, from.y + side}, {from.x, from.y + side}};
}

/// One wound as traced, some of them deep, with a wall that runs in, undermined, or near a zone.
inline wound::Case any_case() {
  const geometry::Polygon outline = any_outline();
  wound::Wound wound{.id = "A", .outline_cm = outline.outer, .islands_cm = outline.holes};
  wound.depth_cm = 0.5 * *rc::gen::inRange(0, 8).as("depth, half cm");
  if (wound.depth_cm > 0) {
    wound.wall_run_in_cm = 0.1 * *rc::gen::inRange(0, 4).as("run-in, mm");
    if (*rc::gen::inRange(0, 3).as("undermined when 0") == 0) {
      wound.undermining.push_back({.from_clock = 2, .to_clock = 5, .extent_cm = 1});
    }
  }
  wound::Assessment seen{.date = "2026-01-01"};
  if (*rc::gen::inRange(0, 3).as("zone when 0") == 0) {
    double right = outline.outer.front().x;
    for (const geometry::Point p : outline.outer) right = std::max(right, p.x);
    seen.skin_zones.push_back({.outline_cm = square_at({right + 1.5, -1}, 2)});
  }
  seen.wounds.push_back(std::move(wound));
  wound::Case value{.label = "made"};
  value.assessments.push_back(std::move(seen));
  value.cautions.reviewed = true;
  return value;
}

}  // namespace drapewright::support
