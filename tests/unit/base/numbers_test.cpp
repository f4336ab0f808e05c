#include "core/base/numbers.h"
#include "core/base/say.h"

#include <gtest/gtest.h>

#include <limits>

namespace drapewright {
namespace {

// "Record to 0.1 cm, half up" (US CMS, public domain).
TEST(Numbers, RoundsHalvesUp) {
  EXPECT_EQ(format_number(4.05, 1), "4.1");
  EXPECT_EQ(format_number(4.049, 1), "4.0");
  EXPECT_EQ(format_number(-4.05, 1), "-4.1");
  EXPECT_EQ(format_number(0.5, 0), "1");
}

TEST(Numbers, NeverWritesAMinusBeforeNothing) { EXPECT_EQ(format_number(-0.04, 1), "0.0"); }

TEST(Numbers, NamesWhatIsNoNumber) {
  EXPECT_EQ(format_number(std::numeric_limits<double>::quiet_NaN(), 1), "not a number");
  EXPECT_EQ(format_number(std::numeric_limits<double>::infinity(), 1), "infinite");
}

TEST(Numbers, ShortFormDropsWhatSaysNothing) {
  EXPECT_EQ(format_short(5), "5");
  EXPECT_EQ(format_short(0.30), "0.3");
  EXPECT_EQ(format_short(12.25), "12.25");
  EXPECT_EQ(format_short(100, 0), "100");
}

TEST(Numbers, WriteTheDecimalMarkOfTheLanguageForPeopleOnly) {
  set_language({.translate = nullptr, .decimal_mark = ','});
  EXPECT_EQ(format_number(1234.5, 2), "1234,50");
  EXPECT_EQ(format_short(12.25), "12,25");
  EXPECT_EQ(plain_number(1234.5, 2), "1234.50");
  EXPECT_EQ(plain_short(12.25), "12.25");
  set_language({});
}

}  // namespace
}  // namespace drapewright
