#include "core/dressing/course_log.h"

#include <gtest/gtest.h>

#include "core/base/error.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

wound::Case dressed(std::vector<wound::Application> applications) {
  wound::Case value = case_of(geometry::circle(6));
  value.dressing.change_every_h = 72;
  value.dressing.course_days = 14;
  value.applications = std::move(applications);
  return value;
}

TEST(CourseLog, IsEmptyBeforeTheFirstDressing) {
  const CourseLog log = course_log(dressed({}), "2031-03-02");
  EXPECT_TRUE(log.dressings.empty());
  EXPECT_EQ(log.planned, 5);
  EXPECT_TRUE(log.next_change.empty());
  EXPECT_TRUE(log.course_end.empty());
  EXPECT_FALSE(log.days_to_change || log.days_to_end);
}

TEST(CourseLog, CountsDaysToTheNextChangeAndTheEnd) {
  const CourseLog log =
      course_log(dressed({{.date = "2031-02-26", .pieces_placed = 2, .pieces_removed = 2},
                          {.date = "2031-03-01", .pieces_placed = 3}}),
                 "2031-03-02");
  EXPECT_EQ(log.next_change, "2031-03-04");
  EXPECT_EQ(log.days_to_change, 2);
  EXPECT_EQ(log.course_end, "2031-03-12");
  EXPECT_EQ(log.days_to_end, 10);
  EXPECT_EQ(log.dressings[0].count, PieceCount::agrees);
  EXPECT_EQ(log.dressings[1].count, PieceCount::still_on);
  EXPECT_FALSE(log.any_differs());
}

TEST(CourseLog, SaysHowLongAChangeIsOverdue) {
  const auto value = dressed({{.date = "2031-02-26", .pieces_placed = 2}});
  EXPECT_EQ(course_log(value, "2031-03-03").days_to_change, -2);
  EXPECT_EQ(course_log(value, "2031-03-15").days_to_end, -3);
  EXPECT_EQ(course_log(value).days_to_change, std::nullopt) << "no day was given";
}

TEST(CourseLog, ADayThatIsHalfOverIsNotWaitedFor) {
  auto value = dressed({{.date = "2031-03-01", .pieces_placed = 2}});
  value.dressing.change_every_h = 60;
  EXPECT_EQ(course_log(value).next_change, "2031-03-03");
  value.dressing.change_every_h = 12;
  EXPECT_EQ(course_log(value).next_change, "2031-03-02");
}

TEST(CourseLog, ADressingComesOffWhenTheCourseEnds) {
  auto value = dressed({{.date = "2031-03-01", .pieces_placed = 2, .pieces_removed = 2},
                        {.date = "2031-03-14", .pieces_placed = 2}});
  EXPECT_EQ(course_log(value).next_change, "2031-03-15");
  value.applications.back().date = "2031-03-20";
  EXPECT_EQ(course_log(value).next_change, "2031-03-23") << "the course is over already";
  value.applications.back().pieces_removed = 2;
  EXPECT_TRUE(course_log(value).next_change.empty()) << "nothing is on";
}

TEST(CourseLog, GoesByDateAndTellsCountsApart) {
  const CourseLog log =
      course_log(dressed({{.date = "2031-03-07", .pieces_placed = 4},
                          {.date = "2031-03-01", .pieces_placed = 3, .pieces_removed = 2},
                          {.date = "2031-03-04", .pieces_placed = 1}}));
  EXPECT_EQ(log.dressings[0].count, PieceCount::differs);
  EXPECT_EQ(log.dressings[1].count, PieceCount::not_counted);
  EXPECT_EQ(log.dressings[2].number, 3);
  EXPECT_EQ(log.dressings[2].placed, 4);
  EXPECT_TRUE(log.any_differs());
}

TEST(RecordChange, WritesWhatCameOutAndWhatWentIn) {
  auto value = dressed({});
  record_change(value, {.date = "2031-03-01", .placed = 3, .note = "edge moist"});
  record_change(value, {.date = "2031-03-04", .removed = 3, .placed = 2});
  ASSERT_EQ(value.applications.size(), 2u);
  EXPECT_EQ(value.applications[0].pieces_removed, 3);
  EXPECT_EQ(value.applications[0].note, "edge moist");
  EXPECT_EQ(value.applications[1].pieces_placed, 2);
  EXPECT_FALSE(value.applications[1].pieces_removed);
  record_change(value, {.date = "2031-03-07", .removed = 2, .note = "therapy ended"});
  EXPECT_EQ(value.applications.size(), 2u);
  EXPECT_EQ(value.applications[1].note, "therapy ended");
}

TEST(RecordChange, KeepsACountThatDiffersAndStops) {
  auto value = dressed({{.date = "2031-03-01", .pieces_placed = 3}});
  record_change(value, {.date = "2031-03-04", .removed = 2, .placed = 3});
  EXPECT_TRUE(course_log(value).any_differs());
  const Plan plan = plan_dressing(value);
  ASSERT_NE(finding(plan, "count-mismatch"), nullptr);
  EXPECT_EQ(finding(plan, "count-mismatch")->severity, Severity::stop);
}

TEST(RecordChange, RefusesWhatCannotHaveHappened) {
  const auto one = dressed({{.date = "2031-03-01", .pieces_placed = 3}});
  auto counted = one;
  counted.applications[0].pieces_removed = 3;
  const struct {
    wound::Case before;
    Change change;
    const char* why;
  } cases[] = {
      {one, {.date = "2031-02-30", .placed = 3}, "no day"},
      {one, {.date = "2031-02-28", .placed = 3}, "before the last dressing"},
      {one, {.date = "2031-03-04", .removed = -1}, "cannot come out"},
      {one, {.date = "2031-03-04", .placed = 0}, "cannot go on"},
      {one, {.date = "2031-03-04"}, "Nothing came out"},
      {dressed({}), {.date = "2031-03-04", .removed = 3, .placed = 3}, "No dressing is written"},
      {counted, {.date = "2031-03-04", .removed = 3, .placed = 3}, "counted out already"},
  };
  for (const auto& [before, change, why] : cases) {
    auto value = before;
    try {
      record_change(value, change);
      ADD_FAILURE() << "taken: " << why;
    } catch (const InputError& error) {
      EXPECT_NE(std::string(error.what()).find(why), std::string::npos) << error.what();
    }
    EXPECT_EQ(value, before) << why;
  }
}

}  // namespace
}  // namespace drapewright::dressing
