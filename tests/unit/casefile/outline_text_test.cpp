#include "core/casefile/outline_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/error.h"

namespace drapewright::casefile {
namespace {

using geometry::Ring;
using testing::AllOf;
using testing::HasSubstr;
using testing::StartsWith;

const Ring square{{0, 0}, {8, 0}, {8, 5}, {0, 5}};
const Ring triangle{{5.2, 3.1}, {-1, 0}, {0.5, 12}};

std::string fault_of(const std::string& text, LengthUnit unit = LengthUnit::cm) {
  try {
    outline_from_text(text, unit);
  } catch (const InputError& fault) {
    return fault.what();
  }
  return "no fault";
}

TEST(OutlineText, TakesTheUsualSeparators) {
  for (const std::string text : {
           "5.2 3.1\n-1 0\n0.5 12",
           "5.2, 3.1\n-1, 0\n0.5, 12\n",
           "5.2,3.1\n-1,0\n.5,12\n",
           "5.2;3.1\r\n-1;0\r\n0.5;12\r\n",
           "5.2\t3.1\n-1\t0\n0.5\t12\n",
           "  5.2   3.1  \n\n \t \n-1 0\n+0.5 1.2e1",
       }) {
    EXPECT_EQ(outline_from_text(text, LengthUnit::cm), triangle) << text;
  }
}

TEST(OutlineText, TakesADecimalCommaThatCanBeNothingElse) {
  for (const std::string text : {
           "5,2 3,1\n-1 0\n0,5 12",
           "5,2;3,1\n-1;0\n0,5;12",
           "5,2\t3,1\n-1\t0\n0,5\t12",
           "5,2, 3,1\n-1, 0\n0,5, 12",
       }) {
    EXPECT_EQ(outline_from_text(text, LengthUnit::cm), triangle) << text;
  }
}

TEST(OutlineText, TakesWholeNumbersPartedByACommaForPoints) {

  EXPECT_EQ(outline_from_text("0,0\n8,0\n8,5\n0,5", LengthUnit::cm), square);
  EXPECT_EQ(outline_from_text("0,0\n8,0\n8,5\n0,5\n0,0", LengthUnit::cm), square);
}

TEST(OutlineText, RefusesACommaThatMayBeEither) {
  EXPECT_THAT(fault_of("0,0\n5,2,3,1\n4,4"),
              AllOf(StartsWith("line 2, column 2: "), HasSubstr("decimal comma"),
                    HasSubstr("expected decimal points")));
  EXPECT_THAT(fault_of("5,2,3\n1,1\n2,2"), StartsWith("line 1, column 2: "));
  // Half a point among decimal commas, which would pass for a whole one by itself.
  EXPECT_THAT(fault_of("5,2 3,1\n5,2\n4,4 1,1"),
              AllOf(StartsWith("line 2, column 2: "), HasSubstr("row 1")));
  EXPECT_THAT(fault_of("5,2\n5,2 3,1\n4,4 1,1"),
              AllOf(StartsWith("line 2, column 2: "), HasSubstr("row 1")));
}

TEST(OutlineText, PassesOverAHeading) {
  for (const std::string heading : {"x y", "x;y", "x (cm),y (cm)", "Point\tNorth"}) {
    EXPECT_EQ(outline_from_text(heading + "\n5.2;3.1\n-1;0\n0.5;12", LengthUnit::cm), triangle);
  }
  EXPECT_THAT(fault_of("1 2\nx y\n3 4\n5 6"), StartsWith("line 2, column 1: found \"x\""));
  EXPECT_THAT(fault_of("x y\nx y\n3 4\n5 6"), StartsWith("line 2, column 1: "));
}

TEST(OutlineText, RefusesAHeadingOfAnotherUnit) {
  EXPECT_THAT(fault_of("x (mm) y (mm)\n1 2\n3 4\n5 7"),
              AllOf(StartsWith("line 1, column 4: the heading says mm"), HasSubstr("in cm")));
  EXPECT_THAT(fault_of("x_inch y_inch\n1 2\n3 4\n5 7", LengthUnit::mm), HasSubstr("inch"));
  EXPECT_EQ(outline_from_text("x_mm y_mm\n52 31\n-10 0\n5 120", LengthUnit::mm), triangle);
}

TEST(OutlineText, SaysWhereAndWhatInARow) {
  EXPECT_THAT(fault_of("1 2\n3 four\n5 6"),
              AllOf(StartsWith("line 2, column 3: found \"four\""), HasSubstr("a number")));
  EXPECT_THAT(fault_of("1 2\n3\n5 6"),
              AllOf(StartsWith("line 2, column 1: found 1 number"), HasSubstr("two: x and y")));
  EXPECT_THAT(fault_of("1 2\n3 4 5\n5 6"), StartsWith("line 2, column 5: found 3 numbers"));
  EXPECT_THAT(fault_of("1;2\n3;\n5;6"), StartsWith("line 2, column 3: there is nothing"));
  EXPECT_THAT(fault_of("1 2\n3 nan\n5 6"), StartsWith("line 2, column 3: found \"nan\""));
  EXPECT_THAT(fault_of("1 2\n3 1e999\n5 6"), StartsWith("line 2, column 3: "));
  EXPECT_THAT(fault_of("1 2\n1.234,5 6\n5 6"), StartsWith("line 2, column 1: "));
  EXPECT_THAT(fault_of("1 2\n3 4cm\n5 6"), HasSubstr("4cm"));
}

TEST(OutlineText, NeedsThreePoints) {
  EXPECT_THAT(fault_of(""), HasSubstr("no point"));
  EXPECT_THAT(fault_of("x y\n\n"), HasSubstr("no point"));
  EXPECT_THAT(fault_of("1 2\n3 4"), HasSubstr("2 points"));
  EXPECT_THAT(fault_of("1 2\n3 4\n1 2"), HasSubstr("2 points"));
}

TEST(OutlineText, TakesWhatSpreadsheetsAndTypesettersWrite) {
  EXPECT_EQ(outline_from_text("\xEF\xBB\xBF"
                              "5.2\xC2\xA0"
                              "3.1\n\xE2\x88\x92"
                              "1 0\n0.5 12",
                              LengthUnit::cm),
            triangle);
}

TEST(OutlineText, ReadsAColumnOfNumbers) {
  EXPECT_EQ(outline_from_text("0\n0\n8\n0\n8\n5\n0\n5\n", LengthUnit::cm), square);
  EXPECT_EQ(outline_from_text("mm\n0\n0\n\n80\n0\n80\n50.0\n0\n50", LengthUnit::mm), square);
}

TEST(OutlineText, RefusesAColumnWithHalfAPoint) {
  try {
    outline_from_text("0\n0\n8\n0\n8\n5\n0", LengthUnit::cm);
    FAIL() << "taken";
  } catch (const InputError& error) {
    EXPECT_NE(std::string(error.what()).find("even count"), std::string::npos) << error.what();
    EXPECT_EQ(error.place().text->line, 7);
  }
}

TEST(OutlineText, KnowsInchesAndMetres) {
  const auto inches = outline_from_text("0 0\n1 0\n1 2", LengthUnit::inch);
  EXPECT_DOUBLE_EQ(inches[1].x, 2.54);
  const auto metres = outline_from_text("x_m y_m\n0 0\n0.08 0\n0.08 0.05", LengthUnit::m);
  EXPECT_DOUBLE_EQ(metres[1].x, 8);
  EXPECT_THROW(outline_from_text("x_in y_in\n0 0\n1 0\n1 2", LengthUnit::m), InputError);
}

}  // namespace
}  // namespace drapewright::casefile
