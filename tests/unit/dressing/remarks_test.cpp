#include <gtest/gtest.h>

#include <algorithm>

#include "core/base/error.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

TEST(Remarks, AskForTheCautionsToBeGoneThrough) {
  wound::Case value = case_of(geometry::circle(6));
  EXPECT_EQ(finding(plan_dressing(value), "cautions-not-reviewed"), nullptr);
  value.cautions.reviewed = false;
  EXPECT_NE(finding(plan_dressing(value), "cautions-not-reviewed"), nullptr);
}

TEST(Remarks, StopAtAContraindicationAndWarnOfARisk) {
  wound::Case value = case_of(geometry::circle(6));
  value.cautions.present = {"anticoagulants", "untreated-osteomyelitis", "something-new"};
  const Plan plan = plan_dressing(value);
  ASSERT_NE(finding(plan, "contraindication"), nullptr);
  EXPECT_EQ(finding(plan, "contraindication")->severity, Severity::stop);
  EXPECT_EQ(finding(plan, "risk-factor")->severity, Severity::warning);
  EXPECT_NE(finding(plan, "caution-unknown"), nullptr);
  EXPECT_EQ(plan.findings.front().severity, Severity::stop) << "stops come first";
}

TEST(Remarks, NameWhatLeavesCommonPractice) {
  wound::Case value = case_of(geometry::circle(6));
  value.dressing.border_cm = 3;
  value.dressing.change_every_h = 96;
  value.dressing.course_days = 21;
  value.dressing.pressure_mmhg = -150;
  value.dressing.canister_max_days = 10;
  const Plan plan = plan_dressing(value);
  for (const char* code :
       {"border-below-practice", "change-every-above-practice", "course-above-practice",
        "pressure-below-practice", "canister-max-above-practice"}) {
    ASSERT_NE(finding(plan, code), nullptr) << code;
    EXPECT_EQ(finding(plan, code)->severity, Severity::warning) << code;
  }
  value = case_of(geometry::circle(6));
  value.dressing.border_cm = 6;
  EXPECT_EQ(finding(plan_dressing(value), "border-above-practice")->severity, Severity::note);
}

TEST(Remarks, StopAtAnUnexploredTunnel) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().wounds[0].tunnels = {{.clock = 2, .length_cm = 3}};
  EXPECT_EQ(finding(plan_dressing(value), "tunnel-unexplored")->severity, Severity::stop);
  value.current().wounds[0].tunnels[0].explored = true;
  EXPECT_EQ(finding(plan_dressing(value), "tunnel-unexplored"), nullptr);
}

TEST(Remarks, StopWhenPiecesAreMissing) {
  wound::Case value = case_of(geometry::circle(6));
  value.applications = {{.date = "2026-05-01", .pieces_placed = 3, .pieces_removed = 3}};
  EXPECT_EQ(finding(plan_dressing(value), "count-mismatch"), nullptr);
  value.applications[0].pieces_removed = 2;
  EXPECT_EQ(finding(plan_dressing(value), "count-mismatch")->severity, Severity::stop);
}

TEST(Remarks, SayHowOldTheAssessmentIs) {
  const wound::Case value = case_of(geometry::circle(6));  // of 2026-05-04
  EXPECT_EQ(finding(plan_dressing(value), "assessment-old"), nullptr) << "no day was given";
  EXPECT_EQ(finding(plan_dressing(value, {}, {.today = "2026-05-07"}), "assessment-old"), nullptr);
  const Plan late = plan_dressing(value, {}, {.today = "2026-06-04"});
  ASSERT_NE(finding(late, "assessment-old"), nullptr);
  EXPECT_NE(finding(late, "assessment-old")->text.find("31 days"), std::string::npos);
  EXPECT_NE(finding(plan_dressing(value, {}, {.today = "2026-05-03"}), "assessment-in-future"),
            nullptr);
}

// The film round an 8 x 5 ellipse measures 18 x 15 cm (calculated).
TEST(Remarks, WarnOfAFilmThatClosesRoundALimb) {
  wound::Case value = case_of(geometry::ellipse(8, 5));
  EXPECT_EQ(finding(plan_dressing(value), "film-round-limb"), nullptr) << "no girth was given";
  value.limb_girth_cm = 18.5;
  EXPECT_EQ(finding(plan_dressing(value), "film-round-limb"), nullptr);
  value.limb_girth_cm = 17;
  const Plan may = plan_dressing(value);
  ASSERT_NE(finding(may, "film-round-limb"), nullptr);
  EXPECT_NE(finding(may, "film-round-limb")->text.find("if its longer side"), std::string::npos);
  value.limb_girth_cm = 14;
  const Plan does = plan_dressing(value);
  ASSERT_NE(finding(does, "film-round-limb"), nullptr);
  EXPECT_EQ(finding(does, "film-round-limb")->text.find("if its longer side"), std::string::npos);
}

TEST(Remarks, WarnOfWoundsDrawnOverEachOther) {
  wound::Case value = case_of(geometry::circle(6));
  add_wound(value, "B", geometry::circle(6, {4, 0}));
  EXPECT_EQ(finding(plan_dressing(value), "wounds-overlap")->severity, Severity::stop);
}

TEST(Findings, HaveCodesTextsAndSources) {
  wound::Case value = case_of(geometry::circle(2));
  value.cautions.reviewed = false;
  value.cautions.present = {"anticoagulants"};
  value.dressing.border_cm = 7;
  const Plan plan = plan_dressing(value);
  EXPECT_GE(plan.findings.size(), 4u);
  for (const Finding& f : plan.findings) {
    EXPECT_FALSE(f.code.empty());
    EXPECT_TRUE(std::ranges::all_of(f.code, [](char c) {
      return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
    })) << f.code;
    EXPECT_FALSE(f.text.empty()) << f.code;
    EXPECT_FALSE(f.source.empty()) << f.code;
  }
  EXPECT_TRUE(std::ranges::is_sorted(plan.findings, {}, &Finding::severity));
}

TEST(Planning, RefusesWhatBreaksTheFormat) {
  wound::Case value = case_of(geometry::circle(6));
  value.dressing.inset_cm = -1;
  EXPECT_THROW(plan_dressing(value), InputError);
}

TEST(Planning, StopsWhenTold) {
  std::stop_source stop;
  stop.request_stop();
  EXPECT_THROW(plan_dressing(case_of(geometry::circle(6)), Progress(stop.get_token())), Cancelled);
}

}  // namespace
}  // namespace drapewright::dressing
