#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/batch/program.h"
#include "tests/support/places.h"

namespace drapewright::batch_tests {
namespace {

using testing::AllOf;
using testing::Each;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

TEST(CheckCommand, SaysWhatAValidCaseHolds) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const Outcome run = folder.run({"check", "leg.json", "-"}, plain_case());
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  EXPECT_THAT(lines_of(run.out),
              AllOf(SizeIs(2), Each(HasSubstr("a valid case, \"demo\", 1 assessment"))));
}

TEST(CheckCommand, FindsEveryDemoCaseValid) {
  for (const auto& entry :
       std::filesystem::directory_iterator(support::project_folder() + "/demo_cases")) {
    if (entry.path().extension() != ".json") continue;
    EXPECT_EQ(Folder().run({"check", entry.path().string()}).status, 0) << entry.path();
  }
}

TEST(Usage, HasHelpWithExamples) {
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"--help"}, {"plan", "--help"}, {"check", "--help"}}) {
    const Outcome run = Folder().run(arguments);
    EXPECT_EQ(run.status, 0);
    EXPECT_THAT(run.err, IsEmpty());
    EXPECT_THAT(run.out, HasSubstr("Examples:\n  drapewright-batch "));
  }
  EXPECT_THAT(Folder().run({"--version"}).out, HasSubstr("drapewright-batch "));
}

TEST(Usage, WhenWrongIsToldInOneLineWithStatusTwo) {
  for (const std::vector<std::string>& arguments : {
           std::vector<std::string>{},
           {"plan"},
           {"check"},
           {"plna", "a.json"},
           {"plan", "a.json", "--jsn"},
           {"plan", "a.json", "--json", "--json-lines"},
           {"plan", "a.json", "b.json", "--svg", "a.svg"},
           {"plan", "a.json", "--svg", "-", "--png", "-"},
           {"plan", "-", "-"},
           {"plan", "a.json", "--dpi", "5"},
           {"plan", "a.json", "--dpi", "many"},
           {"plan", "a.json", "--jobs", "0"},
           {"plan", "a.json", "--today", "2026-02-30"},
           {"plan", "a.json", "--json", "--output", "a.json"},
           {"plan", "a.json", "--json", "--output", "./a.json"},
           {"plan", "a.json", "--svg", "b", "--png", "b"},
       }) {
    const Folder folder;
    folder.put("a.json", plain_case());
    const Outcome run = folder.run(arguments);
    EXPECT_EQ(run.status, 2) << testing::PrintToString(arguments);
    EXPECT_THAT(run.out, IsEmpty());
    EXPECT_THAT(lines_of(run.err), SizeIs(1)) << run.err;
    EXPECT_EQ(folder.get("a.json"), plain_case());
  }
}

}  // namespace
}  // namespace drapewright::batch_tests
