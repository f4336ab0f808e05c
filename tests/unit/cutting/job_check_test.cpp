#include "core/cutting/job_check.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>

#include "core/base/error.h"
#include "core/geometry/shapes.h"

namespace drapewright::cutting {
namespace {

Job good() {
  Job job;
  job.pieces = {{geometry::ellipse(6, 4), {geometry::circle(1)}}};
  job.sheets = {{.length_cm = 20, .width_cm = 12, .unit_cost = 5}};
  job.gap_cm = 0.3;
  return job;
}

struct Fault {
  const char* name;
  std::function<void(Job&)> break_it;
};

class JobCheck : public testing::TestWithParam<Fault> {};

TEST_P(JobCheck, RefusesAndSaysWhatWasExpected) {
  Job job = good();
  ASSERT_NO_THROW(check(job));
  GetParam().break_it(job);
  try {
    (void)lay_out(job, {.max_steps = 1});
    FAIL() << "accepted";
  } catch (const InputError& error) {
    EXPECT_FALSE(error.expected().empty()) << error.what();
  }
}

constexpr double nan = std::numeric_limits<double>::quiet_NaN();

INSTANTIATE_TEST_SUITE_P(
    Faults, JobCheck,
    testing::Values(Fault{"nothing_to_cut_from", [](Job& j) { j.sheets.clear(); }},
                    Fault{"sheets_and_strip", [](Job& j) { j.strip_width_cm = 10; }},
                    Fault{"side_of_nothing", [](Job& j) { j.sheets[0].width_cm = 0; }},
                    Fault{"side_not_a_number", [](Job& j) { j.sheets[0].length_cm = nan; }},
                    Fault{"negative_cost", [](Job& j) { j.sheets[0].unit_cost = -1; }},
                    Fault{"negative_stock", [](Job& j) { j.sheets[0].available = -1; }},
                    Fault{"negative_gap", [](Job& j) { j.gap_cm = -0.1; }},
                    Fault{"edge_gap_not_a_number", [](Job& j) { j.edge_gap_cm = nan; }},
                    Fault{"no_turn", [](Job& j) { j.rotations_deg.emplace(); }},
                    Fault{"two_points",
                          [](Job& j) {
                            j.pieces[0].outer = {{0, 0}, {1, 1}};
                          }},
                    Fault{"hole_outside",
                          [](Job& j) {
                            j.pieces[0].holes = {geometry::circle(1, {9, 0})};
                          }}),
    [](const auto& fault) { return fault.param.name; });

}  // namespace
}  // namespace drapewright::cutting
