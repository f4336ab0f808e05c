#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "tests/support/example_case.h"
#include "tests/support/malformed_cases.h"

namespace drapewright::casefile {
namespace {

using support::example_case;
using testing::HasSubstr;
using testing::StartsWith;

std::string fault_of(const std::string& text) {
  try {
    case_from_json(text, "leg.json");
  } catch (const InputError& fault) {
    return fault.what();
  }
  return "no fault";
}

class MalformedCase : public testing::TestWithParam<support::MalformedCase> {};

TEST_P(MalformedCase, GivesOneLineWithPlaceFoundAndExpected) {
  const std::string line = fault_of(GetParam().text);
  EXPECT_THAT(line, StartsWith("leg.json:" + GetParam().place));
  for (const auto& part : GetParam().contains) EXPECT_THAT(line, HasSubstr(part));
  EXPECT_THAT(line, HasSubstr("; expected "));
  EXPECT_EQ(line.find_first_of("\n\r\t"), std::string::npos) << line;
}

INSTANTIATE_TEST_SUITE_P(Case, MalformedCase, testing::ValuesIn(support::malformed_cases()),
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
