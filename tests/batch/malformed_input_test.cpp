#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/batch/program.h"
#include "tests/support/malformed_cases.h"

namespace drapewright::batch_tests {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using testing::StartsWith;

/// Runs both commands on `file` and expects of each one line and exit status 2; returns the line.
std::string fault_of(const Folder& folder, const std::string& file,
                     const std::string& before = {}) {
  std::string line;
  for (const std::string command : {"check", "plan"}) {
    const Outcome run = folder.run({command, file}, {}, before);
    EXPECT_EQ(run.status, 2);
    EXPECT_THAT(run.out, IsEmpty());
    EXPECT_THAT(lines_of(run.err), SizeIs(1)) << run.err;
    EXPECT_TRUE(run.err.ends_with('\n'));
    if (!line.empty()) {
      EXPECT_EQ(run.err, line);
    }
    line = run.err;
  }
  return line;
}

class MalformedInput : public testing::TestWithParam<support::MalformedCase> {};

TEST_P(MalformedInput, IsRefusedWithOneLineAndStatusTwo) {
  const Folder folder;
  folder.put("leg.json", GetParam().text);
  const std::string line = fault_of(folder, "leg.json");
  EXPECT_THAT(line, StartsWith("leg.json:" + GetParam().place));
  for (const auto& part : GetParam().contains) EXPECT_THAT(line, HasSubstr(part));
}

INSTANTIATE_TEST_SUITE_P(Case, MalformedInput, testing::ValuesIn(support::malformed_cases()),
                         [](const auto& test) { return test.param.name; });

TEST(MalformedInputFile, ThatIsNotThere) {
  EXPECT_THAT(fault_of(Folder(), "none.json"),
              StartsWith("none.json: cannot be read: there is no"));
}

TEST(MalformedInputFile, ThatIsAFolderWithoutCases) {
  const Folder folder;
  std::filesystem::create_directory(folder.path() / "cases");
  EXPECT_EQ(fault_of(folder, "cases"),
            "cases: no case file lies in this folder; expected files that end in .json\n");
}

TEST(MalformedInputFile, OfFiftyMegabytes) {
  const Folder folder;
  folder.put("large.json", "{");
  std::filesystem::resize_file(folder.path() / "large.json", 50u << 20);
  EXPECT_EQ(fault_of(folder, "large.json"),
            "large.json: the file has 50 MB; expected at most 16 MB\n");
}

TEST(MalformedInputFile, ThatMayNotBeRead) {
  const Folder folder;
  // A process cannot read its own memory at address 0, not even the administrator's.
  EXPECT_THAT(fault_of(folder, "/proc/self/mem"), StartsWith("/proc/self/mem: cannot be read: "));
}

TEST(MalformedInputFile, ThatNeverEnds) {
  EXPECT_THAT(fault_of(Folder(), "/dev/zero"), HasSubstr("more than 16 MB"));
}

TEST(MalformedInputFile, WhoseNameHasALineEnd) {
  EXPECT_THAT(fault_of(Folder(), "a\nb.json"), StartsWith("a?b.json: cannot be read"));
}

TEST(MalformedInputFile, OnStandardInput) {
  const Outcome run = Folder().run({"check", "-"}, "{\"a\": 1,}");
  EXPECT_EQ(run.status, 2);
  EXPECT_THAT(run.err, StartsWith("-:1:9: "));
}

TEST(MalformedInputFile, DoesNotStopTheOthers) {
  const Folder folder;
  folder.put("good.json", plain_case());
  folder.put("bad.json", "{");
  const Outcome run =
      folder.run({"plan", "bad.json", "good.json", "none.json", "good.json", "--json-lines"});
  EXPECT_EQ(run.status, 2);
  EXPECT_THAT(lines_of(run.out), SizeIs(2));
  ASSERT_THAT(lines_of(run.err), SizeIs(2));
  EXPECT_THAT(lines_of(run.err)[0], StartsWith("bad.json:1:2: "));
  EXPECT_THAT(lines_of(run.err)[1], StartsWith("none.json: "));
}

}  // namespace
}  // namespace drapewright::batch_tests
