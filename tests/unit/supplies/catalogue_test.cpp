#include <gtest/gtest.h>

#include <algorithm>
#include <set>

#include "core/base/say.h"
#include "core/supplies/stock_item.h"

namespace drapewright::supplies {
namespace {

TEST(Kinds, HaveNamesThatReadBack) {
  for (const Kind kind : {Kind::filler_sheet, Kind::film_sheet, Kind::port, Kind::canister,
                          Kind::battery, Kind::other}) {
    EXPECT_EQ(kind_named(name_of(kind)), kind);
  }
  EXPECT_EQ(kind_named("filler sheet"), std::nullopt);
}

TEST(Catalogue, GivesEverySheetItsSides) {
  for (const StockItem& item : built_in_catalogue()) {
    SCOPED_TRACE(item.item);
    const bool sheet = item.kind == Kind::filler_sheet || item.kind == Kind::film_sheet;
    EXPECT_EQ(item.length_cm.has_value(), sheet);
    EXPECT_EQ(item.width_cm.has_value(), sheet);
    EXPECT_EQ(item.thickness_cm.has_value(), item.kind == Kind::filler_sheet);
    EXPECT_EQ(item.capacity_ml.has_value(), item.kind == Kind::canister);
    EXPECT_GT(item.unit_cost.value_or(0), 0);
  }
}

class InAnotherLanguage : public testing::Test {
 protected:
  InAnotherLanguage() {
    set_language({.translate = [](std::string_view, std::optional<int>) { return "Other"; }});
  }
  ~InAnotherLanguage() override { set_language({}); }
};

TEST_F(InAnotherLanguage, OwnNamesAreTranslatedAndLocalNamesStayAsTheyAre) {
  EXPECT_EQ(shown_name(built_in_catalogue().front().item), "Other");
  EXPECT_EQ(shown_name(built_in_sundries().front().item), "Other");
  EXPECT_EQ(shown_name("Shelf 4, {1} of 2"), "Shelf 4, {1} of 2");
}

TEST(Catalogue, NamesEachItemOnceAndHasEveryKindThatAPlanNeeds) {
  std::set<std::string> names;
  std::set<Kind> kinds;
  for (const StockItem& item : built_in_catalogue()) {
    EXPECT_TRUE(names.insert(item.item).second) << item.item;
    kinds.insert(item.kind);
  }
  EXPECT_EQ(kinds.size(), 5u);
}

// A larger sheet that cost less would make the smaller one senseless in every comparison.
TEST(Catalogue, AsksMoreForMore) {
  for (const StockItem& a : built_in_catalogue()) {
    for (const StockItem& b : built_in_catalogue()) {
      if (a.kind != b.kind || a.thickness_cm != b.thickness_cm || !a.length_cm) continue;
      if (*a.length_cm * *a.width_cm < *b.length_cm * *b.width_cm) {
        EXPECT_LT(*a.unit_cost, *b.unit_cost) << a.item << " against " << b.item;
      }
    }
  }
}

TEST(Sundries, SayWhatTheyAreFor) {
  EXPECT_GE(built_in_sundries().size(), 8u);
  for (const Sundry& sundry : built_in_sundries()) {
    EXPECT_GT(sundry.per_application, 0);
    EXPECT_FALSE(sundry.why.empty());
  }
}

}  // namespace
}  // namespace drapewright::supplies
