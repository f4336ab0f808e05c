#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/batch/program.h"

namespace drapewright::batch_tests {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(Language, IsSpokenFromTheFirstFaultOn) {
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"--language", "de", "plan", "--bogus"},
        {"--language=de", "plan", "--bogus"},
        {"plan", "--bogus", "--language", "de"}}) {
    const Outcome run = Folder().run(arguments);
    EXPECT_EQ(run.status, 2);
    EXPECT_THAT(run.err, HasSubstr("erwartet wird, was --help zeigt"));
  }
  EXPECT_THAT(Folder().run({"plan", "--bogus"}).err, HasSubstr("expected what --help shows"));
}

TEST(Language, IsRefusedWhenItIsNotSpoken) {
  const Outcome run = Folder().run({"--language", "xx", "check", "-"}, plain_case());
  EXPECT_EQ(run.status, 2);
  EXPECT_THAT(run.err, HasSubstr("de"));
}

TEST(Language, LeavesTheDecimalPointToPrograms) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const std::vector<std::string> plan{"plan", "leg.json", "--today", "2026-01-01"};
  auto german = plan, for_programs = plan;
  german.insert(german.end(), {"--language", "de"});
  for_programs.insert(for_programs.end(), {"--language", "de", "--json"});
  EXPECT_THAT(folder.run(german).out, testing::ContainsRegex("[0-9],[0-9] cm"));
  EXPECT_THAT(folder.run(for_programs).out, HasSubstr("\"length_cm\": "));
  EXPECT_THAT(folder.run(for_programs).out,
              Not(testing::ContainsRegex("\"[a-z_]+_cm2?\": [0-9]+,[0-9]")));
}

}  // namespace
}  // namespace drapewright::batch_tests
