#include "core/base/say.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace drapewright {
namespace {

class Say : public testing::Test {
 protected:
  void TearDown() override { set_language({}); }

  /// A language that turns the order of two places around and has a form for two of a thing.
  static void speak_backwards() {
    set_language({.translate = [](std::string_view english, std::optional<int> count) -> std::string {
      if (english == "{1} by {2}") return "{2} mal {1}";
      if (english == "piece" && count) return *count == 2 ? "zwo" : "Stück";
      return {};
    }});
  }
};

TEST_F(Say, SetsInsertsAtTheirPlaces) {
  EXPECT_EQ(say("{1} by {2}", {3, "four"}), "3 by four");
  EXPECT_EQ(say("{1} and {1}", {std::string("x")}), "x and x");
  EXPECT_EQ(say("{} {a} {"), "{} {a} {");
  EXPECT_THROW(say("{2}", {1}), std::logic_error);
}

TEST_F(Say, DoesNotLookIntoWhatItInserts) { EXPECT_EQ(say("{1} {2}", {"{2}", "b"}), "{2} b"); }

TEST_F(Say, LetsTheLanguageOrderThePlaces) {
  speak_backwards();
  EXPECT_EQ(say("{1} by {2}", {3, 4}), "4 mal 3");
  EXPECT_EQ(say("not known to it: {1}", {1}), "not known to it: 1");
}

TEST_F(Say, CountsWithTheRightNoun) {
  EXPECT_EQ(count_of(1, "piece", "pieces"), "1 piece");
  EXPECT_EQ(count_of(0, "piece", "pieces"), "0 pieces");
  EXPECT_EQ(count_of(2, "battery", "batteries"), "2 batteries");
  EXPECT_EQ(count_of(2, "{2}: {1} piece is missing", "{2}: {1} pieces are missing", {"A"}),
            "A: 2 pieces are missing");
  speak_backwards();
  EXPECT_EQ(count_of(2, "piece", "pieces"), "2 zwo");
  EXPECT_EQ(count_of(3, "piece", "pieces"), "3 Stück");
  EXPECT_EQ(count_of(3, "lot", "lots"), "3 lots");
}

}  // namespace
}  // namespace drapewright
