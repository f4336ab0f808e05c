#include "core/base/numbers.h"

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

TEST(Numbers, CountsWithTheRightNoun) {
  EXPECT_EQ(count_of(1, "piece"), "1 piece");
  EXPECT_EQ(count_of(0, "piece"), "0 pieces");
  EXPECT_EQ(count_of(2, "battery", "batteries"), "2 batteries");
}

}  // namespace
}  // namespace drapewright
