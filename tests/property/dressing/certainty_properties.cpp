// Whether the stated spread of a plan's figures holds when the traced edge is moved.

#include <cmath>
#include <random>

#include "core/dressing/plan.h"
#include "core/geometry/measures.h"
#include "tests/property/dressing/any_case.h"

namespace drapewright::dressing {
namespace {

/// Every corner moved along its own normal by at most `error_cm` either way.
geometry::Ring retraced(const geometry::Ring& ring, double error_cm, std::mt19937_64& random) {
  std::uniform_real_distribution<double> by(-error_cm, error_cm);
  geometry::Ring moved = ring;
  for (std::size_t i = 0; i < ring.size(); ++i) {
    const geometry::Point along =
        ring[(i + 1) % ring.size()] - ring[(i + ring.size() - 1) % ring.size()];
    const double length = norm(along);
    if (length > 0) moved[i] = ring[i] + (by(random) / length) * geometry::Point{along.y, -along.x};
  }
  return moved;
}

void require_within(const Figure& stated, double found) {
  RC_ASSERT(std::abs(stated.value - found) <= stated.spread + 1e-9);
}

/// Blobs only: moved corners of a comb or a spiral may cross each other, and such a trace is none.
RC_GTEST_PROP(Certainty, HoldsForRetracedOutlines, ()) {
  support::OutlineMaker maker(*rc::gen::inRange<std::uint64_t>(0, 1'000'000).as("seed"));
  wound::Wound wound{.id = "A", .outline_cm = maker.blob(24, maker.between(2, 6)), .depth_cm = 2};
  wound.wall_run_in_cm = 0.1 * *rc::gen::inRange(0, 4).as("run-in, mm");
  wound::Case value{.label = "made"};
  value.assessments.push_back({.date = "2026-01-01", .wounds = {wound}});
  const Plan plan = plan_dressing(value);
  const WoundMeasures& stated = plan.wounds.front();
  std::mt19937_64 random(7);
  for (int trial = 0; trial < 5; ++trial) {
    value.current().wounds.front().outline_cm =
        retraced(wound.outline_cm, plan.tracing_error_cm, random);
    const Plan again = plan_dressing(value);
    require_within(stated.area, again.wounds.front().area.value);
    require_within(stated.length, again.wounds.front().length.value);
    require_within(stated.head_to_foot, again.wounds.front().head_to_foot.value);
    require_within(stated.side_to_side, again.wounds.front().side_to_side.value);
    require_within(stated.volume, again.wounds.front().volume.value);
  }
}

}  // namespace
}  // namespace drapewright::dressing
