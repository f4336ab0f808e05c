#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/casefile/case_json.h"
#include "tests/batch/program.h"

namespace drapewright::batch_tests {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(RecordCommand, WritesTheCourseOfACaseDown) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const auto record = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"record", "leg.json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Outcome run = folder.run(arguments);
    EXPECT_EQ(run.status, 0) << run.err;
    return run.out;
  };
  EXPECT_THAT(record({"--today", "2031-03-01"}), HasSubstr("No dressing is written down"));
  EXPECT_THAT(record({"--today", "2031-03-01", "--in", "3"}), HasSubstr("2031-03-04 (in 3 days)"));
  EXPECT_THAT(record({"--today", "2031-03-06"}), HasSubstr("2 days overdue"));
  const std::string after =
      record({"--today", "2031-03-04", "--out", "3", "--in", "2", "--note", "edge moist"});
  EXPECT_THAT(after, HasSubstr("agrees"));
  EXPECT_THAT(after, HasSubstr("2 of 5 planned"));
  EXPECT_THAT(after, Not(HasSubstr("STOP")));
  EXPECT_THAT(record({"--today", "2031-03-07", "--out", "1"}), HasSubstr("STOP"));
  const auto value = casefile::case_from_json(folder.get("leg.json"));
  ASSERT_EQ(value.applications.size(), 2u);
  EXPECT_EQ(value.applications[1].note, "edge moist");
  EXPECT_EQ(value.applications[1].pieces_removed, 1);
  EXPECT_THAT(folder.run({"plan", "leg.json"}).out, HasSubstr("2 pieces went in and 1 came"));
}

TEST(RecordCommand, LeavesTheFileAloneWhenAChangeIsRefused) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const auto refused = [&](std::vector<std::string> arguments) {
    arguments.insert(arguments.begin(), {"record", "leg.json"});
    const Outcome run = folder.run(arguments);
    EXPECT_EQ(run.status, 2) << run.out;
    EXPECT_EQ(lines_of(run.err).size(), 1u) << run.err;
    EXPECT_EQ(folder.get("leg.json"), plain_case());
    return run.err;
  };
  EXPECT_THAT(refused({"--out", "3"}), HasSubstr("No dressing is written down"));
  EXPECT_THAT(refused({"--in", "0"}), HasSubstr("1 or more"));
  EXPECT_THAT(refused({"--in", "three"}), HasSubstr("--in"));
  EXPECT_THAT(refused({"--note", "moist"}), HasSubstr("--note"));
  EXPECT_THAT(refused({"--in", "2", "--today", "2031-02-30"}), HasSubstr("2031-02-30"));
}

TEST(RecordCommand, PassesACaseThrough) {
  const Folder folder;
  const Outcome run =
      folder.run({"record", "-", "--in", "2", "--today", "2031-03-01"}, plain_case());
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_EQ(casefile::case_from_json(run.out).applications.front().pieces_placed, 2);
}

TEST(PagesCommand, PrintsRecordAndLabels) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  folder.run({"record", "leg.json", "--in", "3", "--today", "2031-03-01"});
  const auto page = [&](const std::string& kind) {
    const Outcome run =
        folder.run({"pages", "leg.json", "--svg", "-", "--kinds", kind, "--today", "2031-03-02"});
    EXPECT_EQ(run.status, 0) << run.err;
    return run.out;
  };
  const std::string record = page("record");
  for (const char* words :
       {"Application record", "Pieces that went IN", "2031-03-04 (in 2 days)"}) {
    EXPECT_THAT(record, HasSubstr(words));
  }
  EXPECT_THAT(page("labels"), HasSubstr("2031-03-04"));
}

}  // namespace
}  // namespace drapewright::batch_tests
