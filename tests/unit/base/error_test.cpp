#include "core/base/error.h"

#include <gtest/gtest.h>

namespace drapewright {
namespace {

TEST(InputError, SaysWhereWhatAndWhatWasExpectedOnOneLine) {
  const InputError error("the outline crosses itself", "a simple polygon",
                         {.file = "leg.json",
                          .text = TextPosition{12, 5},
                          .pointer = "/assessments/0/wounds/0/outline_cm",
                          .drawing = DrawingPosition{2.5, -1}});
  EXPECT_STREQ(error.what(),
               "leg.json:12:5: at /assessments/0/wounds/0/outline_cm: near (2.50, -1.00) cm: "
               "the outline crosses itself; expected a simple polygon");
}

TEST(InputError, LeavesOutWhatItDoesNotKnow) {
  EXPECT_STREQ(InputError("two points", "").what(), "two points");
  EXPECT_STREQ(InputError("x", "y", {.file = {}, .text = TextPosition{3, 4}}).what(),
               "line 3, column 4: x; expected y");
}

TEST(InputError, KeepsTheInnerPlaceAndTakesTheRestFromTheOuter) {
  const InputError inner("x", "y", {.file = {}, .text = {}, .pointer = "/a"});
  const InputError merged =
      inner.within({.file = "f.json", .text = TextPosition{1, 2}, .pointer = "/b"});
  EXPECT_EQ(merged.place().pointer, "/a");
  EXPECT_EQ(merged.place().file, "f.json");
  ASSERT_TRUE(merged.place().text.has_value());
  EXPECT_EQ(merged.place().text->column, 2);
}

}  // namespace
}  // namespace drapewright
