#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "tests/unit/casefile/example_case.h"

namespace drapewright::casefile {
namespace {

using testing::AllOf;
using testing::EndsWith;
using testing::HasSubstr;
using testing::Not;
using testing::StartsWith;

std::string fault_of(const std::string& text) {
  try {
    case_from_json(text, "leg.json");
  } catch (const InputError& fault) {
    return fault.what();
  }
  return "no fault";
}

/// A case file with one fault, and what the line about it must say.
struct Malformed {
  std::string name;
  std::string text;
  std::string begins;                 ///< file, line and column
  std::vector<std::string> contains;  ///< what was found, what was expected
};

std::string point_list(const std::string& points) { return "\"outline_cm\": [" + points + "]"; }
const std::string square = "[0, 0], [8, 0], [8, 5], [0, 5]";

std::vector<Malformed> malformed_cases() {
  const std::string good = example_case();
  return {
      {"Empty", "", "leg.json: ", {"empty", "case in JSON"}},
      {"Blank", " \n \n", "leg.json:1:1: ", {"nothing but blanks"}},
      {"NotJson", "Wound of 8 x 5", "leg.json:1:1: ", {"not JSON", "Wound of", "begins with {"}},
      {"Xml", "<case/>", "leg.json:1:1: ", {"not JSON", "<case/>"}},
      {"Truncated", good.substr(0, 150), "leg.json:", {"ends in the middle", "line 6"}},
      {"TruncatedInText", good.substr(0, 40), "leg.json:3:", {"cut off"}},
      {"Binary", std::string("PK\3\4\0\0", 6), "leg.json:1:5: ", {"zero byte"}},
      {"Utf16", std::string("\xFF\xFE{\0", 4), "leg.json:1:", {"zero byte", "UTF-8"}},
      {"InvalidUtf8", example_case() + "\xC3", "leg.json:10:1: ", {"follows the end"}},
      {"InvalidUtf8InText", "{\"label\": \"caf\xE9\"}", "leg.json:1:", {"not UTF-8"}},
      {"TwoCases", good + good, "leg.json:10:1: ", {"follows the end"}},
      {"ListInsteadOfCase", "[1]", "leg.json:1:1: ", {"a list", "the case"}},
      {"NumberInsteadOfCase", "5", "leg.json:1:1: ", {"the number 5", "the case"}},
      {"MissingComma", "{\"a\": 1 \"b\": 2}", "leg.json:1:9: ", {"comma or }"}},
      {"MissingColon", "{\"a\" 1}", "leg.json:1:6: ", {"colon"}},
      {"SurplusComma", "{\"a\": 1,}", "leg.json:1:9: ", {"comma before the closing }"}},
      {"SurplusCommaInList", "{\"a\": [1,]}", "leg.json:1:10: ", {"comma before the closing ]"}},
      {"WrongBracket", "{\"a\": [1}", "leg.json:1:9: ", {"found }", "line 1, column 7", "]"}},
      {"SingleQuotes", "{'a': 1}", "leg.json:1:2: ", {"single quotation mark"}},
      {"Comment", "{ // a case\n}", "leg.json:1:3: ", {"comment"}},
      {"NameWithoutQuotes", "{label: 1}", "leg.json:1:2: ", {"\"label\" without quotation"}},
      {"OpenText", "{\"label\": \"a\n}", "leg.json:1:11: ", {"not closed"}},
      {"BadEscape", "{\"label\": \"C:\\wounds\"}", "leg.json:1:14: ", {"not an escape"}},
      {"LeadingZero", "{\"a\": 05}", "leg.json:1:7: ", {"05 is not a number"}},
      {"LettersAfterANumber", "{\"a\": 5cm}", "leg.json:1:7: ", {"5cm is not a number"}},
      {"Fraction", "{\"a\": 1/2}", "leg.json:1:8: ", {"found /", "comma or }"}},
      {"LeadingPoint", "{\"a\": .5}", "leg.json:1:7: ", {".5 is not a number"}},
      {"HugeNumber", "{\"a\": 1e999}", "leg.json:1:7: ", {"1e999 is too large"}},
      {"NaN",
       example_case(point_list(square) + ", \"depth_cm\": NaN"),
       "leg.json:6:",
       {"NaN", "finite"}},
      {"Infinity",
       example_case(point_list(square) + ", \"depth_cm\": -Infinity"),
       "leg.json:6:",
       {"-Infinity", "finite"}},
      {"DecimalCommaInMember",
       example_case("\"depth_cm\": 5,2, " + point_list(square)),
       "leg.json:6:",
       {"decimal comma", "point"}},
      {"DecimalCommaInPoint",
       example_case(point_list("[0,5, 0], [8, 0], [8, 5]")),
       "leg.json:6:35: ",
       {"a point of 3 numbers", "decimal point, not a comma",
        "/assessments/0/wounds/0/outline_cm/0"}},
      {"NoVersion",
       "{\"label\": \"demo\", \"assessments\": []}",
       "leg.json:1:1: ",
       {"without \"drapewright_case\""}},
      {"NewerVersion",
       "{\"drapewright_case\": 2, \"wards\": []}",
       "leg.json:1:22: ",
       {"version 2", "newer than this program", "/drapewright_case"}},
      {"VersionNought", "{\"drapewright_case\": 0}", "leg.json:1:22: ", {"version 0", "1"}},
      {"VersionAsText",
       "{\"drapewright_case\": \"1\"}",
       "leg.json:1:22: ",
       {"number as text, \"1\""}},
      {"Plan", "{\"drapewright_plan\": 1}", "leg.json:1:1: ", {"a plan, not a case"}},
      {"NoLabel",
       "{\"drapewright_case\": 1, \"assessments\": []}",
       "leg.json:1:1: ",
       {"without \"label\""}},
      {"EmptyLabel",
       "{\"drapewright_case\": 1, \"label\": \"\", \"assessments\": []}",
       "leg.json:1:34: ",
       {"/label", "0 characters", "1 to 80"}},
      {"NoAssessment",
       "{\"drapewright_case\": 1, \"label\": \"x\", \"assessments\": []}",
       "leg.json:1:54: ",
       {"/assessments", "one assessment or more"}},
      {"NoOutline",
       example_case("\"depth_cm\": 1"),
       "leg.json:6:7: ",
       {"a wound without \"outline_cm\""}},
      {"MisspeltRequired",
       example_case("\"outlin_cm\": [" + square + "]"),
       "leg.json:6:20: ",
       {"\"outlin_cm\"", "did you mean \"outline_cm\"?"}},
      {"MisspeltOptional",
       example_case(point_list(square) + ", \"dept_cm\": 2"),
       "leg.json:6:",
       {"\"dept_cm\"", "did you mean \"depth_cm\"?", "/assessments/0/wounds/0/dept_cm"}},
      {"OtherUnit",
       example_case(point_list(square) + ", \"depth_mm\": 20"),
       "leg.json:6:",
       {"\"depth_mm\"", "did you mean \"depth_cm\"?"}},
      {"WrongType",
       example_case("\"outline_cm\": \"square\""),
       "leg.json:6:34: ",
       {"the text \"square\"", "a list"}},
      {"NullNumber",
       example_case(point_list(square) + ", \"depth_cm\": null"),
       "leg.json:6:",
       {"found null", "a number"}},
      {"NumberAsText",
       example_case(point_list(square) + ", \"depth_cm\": \"5\""),
       "leg.json:6:",
       {"number as text, \"5\"", "without quotation marks: 5"}},
      {"DecimalCommaAsText",
       example_case(point_list(square) + ", \"depth_cm\": \"5,2\""),
       "leg.json:6:",
       {"number as text, \"5,2\"", "5.2"}},
      {"NegativeDepth",
       example_case(point_list(square) + ", \"depth_cm\": -1"),
       "leg.json:6:",
       {"-1", "0 to 30 cm", "/assessments/0/wounds/0/depth_cm"}},
      {"AbsurdOutline",
       example_case(point_list("[0, 0], [800, 0], [800, 500]")),
       "leg.json:6:",
       {"100"}},
      {"AbsurdBorder",
       example_case(point_list(square), ",\n  \"dressing\": { \"border_cm\": 50 }"),
       "leg.json:9:30: ",
       {"border_cm", "50", "0 to 20 cm", "/dressing/border_cm"}},
      {"TwoPoints",
       example_case(point_list("[0, 0], [8, 0]")),
       "leg.json:6:34: ",
       {"2 points", "three"}},
      {"TwoDistinctPoints",
       example_case(point_list("[0, 0], [8, 0], [8, 0], [0, 0]")),
       "leg.json:6:",
       {"three"}},
      {"SelfCrossing",
       example_case(point_list("[0, 0], [8, 0], [0, 5], [8, 5]")),
       "leg.json:6:",
       {"cross", "near (4.00, 2.50) cm", "/outline_cm"}},
      {"IslandOutside",
       example_case(point_list(square) + ", \"islands_cm\": [[[9, 0], [10, 0], [10, 1]]]"),
       "leg.json:6:",
       {"/islands_cm", "near ("}},
      {"IslandCrossing",
       example_case(point_list(square) + ", \"islands_cm\": [[[7, 2], [10, 2], [10, 3]]]"),
       "leg.json:6:",
       {"/islands_cm", "near ("}},
      {"SameIdTwice",
       example_case(point_list(square) + " }, { \"id\": \"A\", " +
                    point_list("[20, 0], [28, 0], [28, 5]")),
       "leg.json:6:",
       {"id \"A\"", "/assessments/0/wounds/1/id"}},
      {"SameMemberTwice",
       example_case(point_list(square) + ", \"depth_cm\": 1, \"depth_cm\": 2"),
       "leg.json:6:",
       {"\"depth_cm\"", "second time", "/assessments/0/wounds/0/depth_cm"}},
      {"NoSuchDay",
       "{\"drapewright_case\": 1, \"label\": \"x\", \"assessments\": [{\"date\": \"2026-02-30\", "
       "\"wounds\": [{\"id\": \"A\", " +
           point_list(square) + "}]}]}",
       "leg.json:1:",
       {"2026-02-30", "YYYY-MM-DD", "/assessments/0/date"}},
      {"DeepNesting",
       example_case(point_list(square), ", \"x\": " + std::string(100000, '[')),
       "leg.json:8:",
       {"nested too deeply", "64"}},
      {"DeepObjects",
       [] {
         std::string deep;
         for (int i = 0; i < 1000; ++i) deep += "{\"a\":";
         return deep;
       }(),
       "leg.json:1:",
       {"nested too deeply", "64"}},
      {"UnknownKind",
       example_case(point_list(square), ", \"supplies\": [{\"item\": \"x\", \"kind\": \"foam\"}]"),
       "leg.json:8:",
       {"\"foam\"", "filler_sheet"}},
      {"HalfAPiece",
       example_case(point_list(square),
                    ", \"applications\": [{\"date\": \"2026-03-02\", \"pieces_placed\": 1.5}]"),
       "leg.json:8:",
       {"1.5", "whole number"}},
  };
}

void PrintTo(const Malformed& value, std::ostream* out) { *out << value.name; }

class MalformedCase : public testing::TestWithParam<Malformed> {};

TEST_P(MalformedCase, GivesOneLineWithPlaceFoundAndExpected) {
  const std::string line = fault_of(GetParam().text);
  EXPECT_THAT(line, StartsWith(GetParam().begins));
  for (const auto& part : GetParam().contains) EXPECT_THAT(line, HasSubstr(part));
  EXPECT_THAT(line, HasSubstr("; expected "));
  EXPECT_EQ(line.find_first_of("\n\r\t"), std::string::npos) << line;
}

INSTANTIATE_TEST_SUITE_P(Case, MalformedCase, testing::ValuesIn(malformed_cases()),
                         [](const auto& test) { return test.param.name; });

TEST(CaseText, MayBeginWithAByteOrderMark) {
  EXPECT_EQ(case_from_json("\xEF\xBB\xBF" + example_case()), case_from_json(example_case()));
  EXPECT_THAT(fault_of("\xEF\xBB\xBF{]"), StartsWith("leg.json:1:2: "));
}

TEST(CaseText, MayHaveWindowsLineEnds) {
  std::string text = example_case();
  for (auto at = text.find('\n'); at != std::string::npos; at = text.find('\n', at + 2)) {
    text.insert(at, "\r");
  }
  EXPECT_EQ(case_from_json(text), case_from_json(example_case()));
}

TEST(CaseText, ColumnsCountCharactersNotBytes) {
  EXPECT_THAT(fault_of("{\"label\": \"\xC3\xA9\xC3\xA9\xC3\xA9\", !}"),
              StartsWith("leg.json:1:18: "));
}

}  // namespace
}  // namespace drapewright::casefile
