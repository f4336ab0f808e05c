#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <regex>
#include <set>

#include "tests/batch/program.h"
#include "tests/support/malformed_cases.h"

namespace drapewright::batch_tests {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::Not;

const std::vector<std::string> demos{
    "plain-heel",     "risk-factors",         "two-wounds-one-film", "film-cut-short",
    "narrow-arm",     "no-port-zone",         "pocket-and-tunnel",   "deep-sloping-wall",
    "island-of-skin", "larger-than-any-sheet"};

/// A demo case without the English that its author wrote into it.
std::string without_own_words(const std::string& name) {
  std::ifstream file(demo_case(name));
  json value = json::parse(file);
  value["label"] = "Fall";
  for (json& assessment : value["assessments"]) {
    if (!assessment.contains("skin_zones")) continue;
    for (json& zone : assessment["skin_zones"]) zone.erase("note");
  }
  return value.dump();
}

std::string in_german(const Folder& folder, std::vector<std::string> arguments) {
  arguments.insert(arguments.end(), {"--language", "de", "--today", "2026-05-01"});
  const Outcome run = folder.run(arguments);
  EXPECT_EQ(run.status, 0) << run.err;
  return run.out;
}

/// Words of English that no German text has. Sources, in square brackets, keep their titles.
std::vector<std::string> english_in(const std::string& text) {
  static const std::regex source(R"(\[[^\]]*\])");
  static const std::regex word(
      R"(\b(the|of|and|is|are|with|from|to|at|it|for|no|not|cut|film|filler|sheet|wound|port|edge|page)\b)");
  const std::string own = std::regex_replace(text, source, "");
  std::set<std::string> found;
  for (std::sregex_iterator at(own.begin(), own.end(), word), end; at != end; ++at) {
    const auto begin = static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, at->position() - 20));
    found.insert(own.substr(begin, 60));
  }
  return {found.begin(), found.end()};
}

/// What a drawing says: its words, its title and its description, without marks.
std::string words_of_svg(const std::string& svg) {
  static const std::regex said("<(?:text|title|desc)[^>]*>([^<]*)<");
  std::string words;
  for (std::sregex_iterator at(svg.begin(), svg.end(), said), end; at != end; ++at) {
    words += (*at)[1].str() + "\n";
  }
  return words;
}

std::vector<std::string> matches(const std::string& text, const std::string& expression) {
  const std::regex sought(expression);
  std::vector<std::string> all;
  for (std::sregex_iterator at(text.begin(), text.end(), sought), end; at != end; ++at) {
    all.push_back(at->str());
  }
  return all;
}

TEST(German, LeavesNoEnglishInASummary) {
  for (const std::string& name : demos) {
    const Folder folder;
    folder.put("fall.json", without_own_words(name));
    const std::string summary = in_german(folder, {"plan", "fall.json"});
    EXPECT_THAT(summary, HasSubstr("Wundfüller")) << name;
    EXPECT_THAT(english_in(summary), testing::IsEmpty()) << name;
  }
}

TEST(German, LeavesNoEnglishInDrawingsAndOnPages) {
  for (const std::string& name : demos) {
    const Folder folder;
    folder.put("fall.json", without_own_words(name));
    in_german(folder, {"plan", "fall.json", "--output", "plan.txt", "--svg", "p.svg", "--cut",
                       "c.svg", "--section", "s.svg"});
    in_german(folder, {"pages", "fall.json", "--svg", "b.svg", "--kinds",
                       "plan,what-to-do,teaching,solution"});
    in_german(folder, {"templates", "fall.json", "--svg", "t.svg", "--mirrored"});
    int read = 0;
    for (const auto& entry : std::filesystem::directory_iterator(folder.path())) {
      if (entry.path().extension() != ".svg") continue;
      const std::string words = words_of_svg(folder.get(entry.path().filename().string()));
      EXPECT_GE(words.size(), 100U) << entry.path();
      EXPECT_THAT(english_in(words), testing::IsEmpty()) << name << " " << entry.path().filename();
      ++read;
    }
    EXPECT_GE(read, 8) << name;
  }
}

TEST(German, LeavesNoEnglishInAForecast) {
  const Folder folder;
  for (const std::string& name : demos) folder.put(name + ".json", without_own_words(name));
  in_german(folder, {"forecast", "--stock-template", "stock.csv"});
  const std::string text =
      in_german(folder, {"forecast", ".", "--stock", "stock.csv", "--what-if", "canister_ml=500"});
  EXPECT_THAT(text, HasSubstr("BESTELLUNGEN"));
  // The files are named in English.
  EXPECT_THAT(english_in(std::regex_replace(text, std::regex("[a-z-]+\\.json"), "")),
              testing::IsEmpty());
}

/// The members of an answer in which people are spoken to.
const std::set<std::string> spoken_members{"text", "source", "basis", "arithmetic"};

void expect_same_for_programs(const json& english, const json& german, const std::string& at) {
  ASSERT_EQ(english.type(), german.type()) << at;
  if (!english.is_structured()) {
    EXPECT_EQ(english, german) << at;
    return;
  }
  ASSERT_EQ(english.size(), german.size()) << at;
  for (auto [a, b] = std::pair(english.begin(), german.begin()); a != english.end(); ++a, ++b) {
    const std::string name = english.is_object() ? a.key() : "*";
    ASSERT_EQ(name, german.is_object() ? b.key() : "*") << at;
    if (!spoken_members.contains(name)) expect_same_for_programs(*a, *b, at + "/" + name);
  }
}

TEST(German, LeavesWhatProgramsReadAlone) {
  for (const std::string& name : demos) {
    const std::vector<std::string> plan{"plan", demo_case(name).string(), "--today", "2026-05-01"};
    auto english = plan, german = plan;
    english.insert(english.end(), {"--json"});
    german.insert(german.end(), {"--json", "--language", "de"});
    expect_same_for_programs(json::parse(Folder().run(english).out),
                             json::parse(Folder().run(german).out), name);
    english = german = plan;
    english.insert(english.end(), {"--svg", "-"});
    german.insert(german.end(), {"--svg", "-", "--language", "de"});
    const std::string ids = "(id|class)=\"[^\"]*\"";
    const auto of_english = matches(Folder().run(english).out, ids);
    EXPECT_GE(of_english.size(), 20U);
    EXPECT_EQ(of_english, matches(Folder().run(german).out, ids)) << name;
  }
}

TEST(German, FaultsAreSaidInIt) {
  int read = 0;
  for (const auto& bad : support::malformed_cases()) {
    const Outcome run = Folder().run({"check", "-", "--language", "de"}, bad.text);
    EXPECT_EQ(run.status, 2) << bad.name;
    // What stands in the file is quoted as it is, and the words that it may hold.
    const std::string own = std::regex_replace(
        run.err, std::regex("\"[^\"]*\"|„[^“]*“|`[^`]*`|/[a-z0-9_/]+|filler_sheet.*"), "");
    EXPECT_THAT(english_in(own), testing::IsEmpty()) << bad.name << ": " << run.err;
    ++read;
  }
  EXPECT_GE(read, 20);
}

TEST(German, HelpIsInIt) {
  const std::string plan = Folder().run({"plan", "--help", "--language", "de"}).out;
  EXPECT_THAT(plan, HasSubstr("Aufruf: drapewright-batch plan [OPTIONEN]"));
  EXPECT_THAT(plan, Not(HasSubstr("Options:")));
  EXPECT_THAT(plan, Not(HasSubstr("Usage")));
  EXPECT_THAT(plan, Not(testing::ContainsRegex("Where the plan goes")));
}

// Longer in German, and still one page to keep beside the device.
TEST(German, WhatToDoIsOnePage) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  for (const char* paper : {"a4", "letter"}) {
    const std::string page = in_german(
        folder, {"pages", "leg.json", "--kinds", "what-to-do", "--svg", "-", "--paper", paper});
    EXPECT_THAT(page, HasSubstr("Seite 1 von 1")) << paper;
  }
}

}  // namespace
}  // namespace drapewright::batch_tests
