// The document alone: undo, merging, what is asked for twice, and lists as text.
#include <gtest/gtest.h>

#include <QSignalSpy>
#include <QTest>

#include "app/desktop/document/case_document.h"
#include "app/desktop/document/demo_cases.h"
#include "app/desktop/document/shape_ref.h"
#include "app/desktop/jobs/plan_job.h"
#include "app/desktop/panels/material_rows.h"
#include "core/geometry/shapes.h"

namespace drapewright::desktop {
namespace {

const QString today = "2026-11-24";

void set_border(CaseDocument& document, double border) {
  document.edit("film border", "border",
                [&](wound::Case& value) { value.dressing.border_cm = border; });
}

TEST(CaseDocument, ChangesThatChangeNothingMakeNoStep) {
  CaseDocument document(today);
  set_border(document, document.value().dressing.border_cm);
  EXPECT_EQ(document.undo_stack().count(), 0);
  EXPECT_FALSE(document.is_modified());
}

TEST(CaseDocument, TypingInOneFieldIsOneStep) {
  CaseDocument document(today);
  set_border(document, 4);
  set_border(document, 4.5);
  EXPECT_EQ(document.undo_stack().count(), 1);
  document.undo_stack().undo();
  EXPECT_EQ(document.value().dressing.border_cm, 5);
}

TEST(CaseDocument, TypedAndTypedBackLeavesNothingToUndo) {
  CaseDocument document(today);
  set_border(document, 4);
  set_border(document, 5);
  EXPECT_EQ(document.undo_stack().count(), 0);
}

TEST(CaseDocument, ANewStretchOfTypingIsANewStep) {
  CaseDocument document(today);
  set_border(document, 4);
  document.end_stretch();
  set_border(document, 4.5);
  EXPECT_EQ(document.undo_stack().count(), 2);
}

TEST(CaseDocument, UndoOfEverythingGivesTheFirstCaseBack) {
  CaseDocument document(today);
  const wound::Case before = document.value();
  document.edit("add wound", {}, [](wound::Case& value) {
    add_wound(value, geometry::ellipse(8, 5));
    add_island(value, 0, geometry::ellipse(1, 1));
    add_zone(value, wound::ZoneKind::no_port, geometry::rectangle(2, 2));
  });
  EXPECT_EQ(shapes_of(document.value()).size(), 3U);
  document.edit("remove", {}, [](wound::Case& value) {
    remove_shape(value, shapes_of(value).front());  // its island goes with it
  });
  EXPECT_EQ(shapes_of(document.value()).size(), 1U);
  document.undo_stack().undo();
  document.undo_stack().undo();
  EXPECT_EQ(document.value(), before);
}

TEST(CaseDocument, WhatCouldNotBeReadBackIsNotSaved) {
  CaseDocument document(today);
  EXPECT_THROW(document.save_as("no-wounds.json"), InputError);
  EXPECT_TRUE(document.path().isEmpty());
}

TEST(DemoCases, AllAreBuiltInAndRead) {
  const auto all = demo_cases();
  EXPECT_GE(all.size(), 8U);
  for (const auto& demo : all) EXPECT_NO_THROW(read_demo(demo.name)) << demo.name.toStdString();
  EXPECT_THROW(read_demo("no-such"), InputError);
}

TEST(PlanJob, TheLatestRequestWins) {
  PlanJob job;
  std::vector<PlanResult> results;
  QObject::connect(&job, &PlanJob::finished,
                   [&](const PlanResult& result) { results.push_back(result); });
  std::shared_ptr<const wound::Case> last;
  for (int i = 0; i < 20; ++i) {
    auto value = std::make_shared<wound::Case>(read_demo("plain-heel"));
    value->dressing.border_cm = 3 + 0.1 * i;
    last = value;
    job.request(value);
  }
  ASSERT_TRUE(QTest::qWaitFor([&] { return !results.empty(); }, 10000));
  QTest::qWait(50);
  ASSERT_EQ(results.size(), 1U);
  EXPECT_EQ(results.front().planned, last);
  ASSERT_TRUE(results.front().plan);
  EXPECT_DOUBLE_EQ(results.front().plan->border_cm, last->dressing.border_cm);
}

TEST(PlanJob, CancelledReportsNothing) {
  PlanJob job;
  const QSignalSpy finished(&job, &PlanJob::finished);
  job.request(std::make_shared<wound::Case>(read_demo("plain-heel")));
  job.cancel();
  EXPECT_FALSE(job.is_busy());
  QTest::qWait(100);
  EXPECT_EQ(finished.count(), 0);
}

TEST(PlanJob, ACaseThatCannotBePlannedIsAFaultWithItsPlace) {
  PlanJob job;
  PlanResult got;
  QObject::connect(&job, &PlanJob::finished, [&](const PlanResult& result) { got = result; });
  auto crossed = std::make_shared<wound::Case>(read_demo("plain-heel"));
  crossed->current().wounds.front().outline_cm = {{0, 0}, {6, 5}, {6, 0}, {0, 4}};
  job.request(crossed);
  ASSERT_TRUE(QTest::qWaitFor([&] { return got.planned != nullptr; }, 10000));
  ASSERT_TRUE(got.fault);
  const auto findings = findings_of(got);
  ASSERT_EQ(findings.size(), 1U);
  EXPECT_EQ(findings.front().severity, dressing::Severity::stop);
  ASSERT_TRUE(findings.front().where_cm);
}

// RFC 4180: fields with commas, quotes or line breaks are quoted, quotes doubled, lines end in
// CRLF.
TEST(MaterialRows, CsvQuotesWhatRfc4180Says) {
  const QByteArray csv = as_csv({{"Film 20 x 20", "1", "5", "14 d at 72 h: 5, each \"large\""}});
  EXPECT_EQ(csv,
            "Item,Each time,Course,How it is worked out\r\n"
            "Film 20 x 20,1,5,\"14 d at 72 h: 5, each \"\"large\"\"\"\r\n");
}

}  // namespace
}  // namespace drapewright::desktop
