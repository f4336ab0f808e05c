#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

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

/// What a plan of a demo case says in German, without the names of sources, which keep their
/// titles.
std::vector<std::string> said_in_german(const std::string& name) {
  const Outcome run = Folder().run(
      {"plan", demo_case(name).string(), "--language", "de", "--json", "--today", "2027-01-01"});
  EXPECT_EQ(run.status, 0) << run.err;
  const auto plan = nlohmann::json::parse(run.out);
  std::vector<std::string> texts;
  for (const auto& finding : plan.at("findings")) texts.push_back(finding.at("text"));
  for (const auto& line : plan.at("consumables")) texts.push_back(line.at("basis"));
  return texts;
}

TEST(Language, LeavesNoEnglishInWhatAPlanSays) {
  const std::vector<std::string> english{" the ", " of ", " and ", " is ", " with ", " it "};
  for (const std::string name :
       {"plain-heel", "risk-factors", "two-wounds-one-film", "film-cut-short", "narrow-arm",
        "no-port-zone", "pocket-and-tunnel", "deep-sloping-wall", "larger-than-any-sheet",
        "smaller-than-aperture", "series-of-three"}) {
    const auto texts = said_in_german(name);
    EXPECT_GE(texts.size(), 5U) << name;
    for (const std::string& text : texts) {
      for (const std::string& word : english) EXPECT_THAT(text, Not(HasSubstr(word))) << name;
    }
  }
}

}  // namespace
}  // namespace drapewright::batch_tests
