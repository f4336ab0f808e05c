#include "core/casefile/stock_csv.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "core/base/calendar.h"
#include "core/base/error.h"
#include "core/casefile/csv.h"
#include "core/casefile/what_if.h"
#include "core/forecast/forecast.h"

namespace drapewright::casefile {
namespace {

using testing::AllOf;
using testing::HasSubstr;

const std::string header =
    "item,kind,on_hand,lot,expires,on_order,due,pack_size,lead_days,unit_cost\n";

std::string fault_of(const std::string& text) {
  try {
    shelf_from_csv(text, "stock.csv");
  } catch (const InputError& error) {
    return error.what();
  }
  return "no fault";
}

TEST(StockCsv, ReadsLotsAndDeliveriesOfAnItem) {
  const auto shelf = shelf_from_csv(header +
                                    "Film,film_sheet,12,L1,2026-09-30,,,10,3.5,6\n"
                                    "Port,port,4,,,,,,,\n"
                                    "Film,,3,L2,2026-05-01,,,,,\n"
                                    "Film,,,,2027-01-31,20,2026-03-09,,,\n");
  ASSERT_EQ(shelf.size(), 2u);
  const auto& film = shelf[0];
  EXPECT_EQ(film.kind, supplies::Kind::film_sheet);
  ASSERT_EQ(film.lots.size(), 2u);
  EXPECT_EQ(film.lots[1], (forecast::Lot{3, day_number("2026-05-01"), "L2"}));
  ASSERT_EQ(film.deliveries.size(), 1u);
  EXPECT_EQ(film.deliveries[0].quantity, 20);
  EXPECT_EQ(date_of_day(film.deliveries[0].due), "2026-03-09");
  EXPECT_EQ(film.pack_size, 10);
  EXPECT_EQ(film.lead_days, 3.5);
  EXPECT_EQ(film.unit_cost, 6.0);
  EXPECT_FALSE(shelf[1].unit_cost);
}

TEST(StockCsv, IsWrittenAsItIsReadBack) {
  forecast::Shelf shelf = forecast::stock_template();
  shelf[0].lots = {{5, day_number("2026-09-30"), "A, \"first\""}, {0, {}, ""}};
  shelf[0].deliveries = {{day_number("2026-03-09").value(), 7, {}}};
  shelf[1].item = "=1+1; of them";
  shelf[2].pack_size = 12;
  shelf[2].lead_spread_days = 1.25;
  shelf[2].minimum = 3;
  EXPECT_EQ(shelf_from_csv(shelf_to_csv(shelf)), shelf);
}

TEST(StockCsv, TakesSemicolonsAByteOrderMarkAndEmptyLines) {
  const auto shelf = shelf_from_csv("\xEF\xBB\xBFitem;on_hand\r\n\r\n\"Film; large\";3\r\n;;\r\n");
  ASSERT_EQ(shelf.size(), 1u);
  EXPECT_EQ(shelf[0].item, "Film; large");
  EXPECT_EQ(shelf[0].lots[0].quantity, 3);
}

TEST(StockCsv, SaysRowAndColumnOfAFault) {
  EXPECT_THAT(fault_of(header + "Film,,ten\n"),
              AllOf(HasSubstr("stock.csv:2:7"), HasSubstr("row 2, column on_hand: 'ten'")));
  EXPECT_THAT(fault_of(header + "Film,,1\nFilm,,1.5\n"), HasSubstr("row 3, column on_hand"));
  EXPECT_THAT(fault_of(header + "Film,,-1\n"), HasSubstr("column on_hand"));
  EXPECT_THAT(fault_of(header + "Film,sheet,1\n"),
              AllOf(HasSubstr("column kind"), HasSubstr("film_sheet")));
  EXPECT_THAT(fault_of(header + "Film,,1,,2026-02-30\n"),
              AllOf(HasSubstr("column expires"), HasSubstr("YYYY-MM-DD")));
  EXPECT_THAT(fault_of(header + ",,1\n"), HasSubstr("row 2, column item"));
  EXPECT_THAT(fault_of(header + "Film,,,,,5,\n"), HasSubstr("column due"));
  EXPECT_THAT(fault_of(header + "Film,,,L1\n"), HasSubstr("lot L1 has no count"));
  EXPECT_THAT(fault_of(header + "Film,,1,,,5,2026-03-09\n"), HasSubstr("a row for each"));
  EXPECT_THAT(fault_of(header + "Film,,1,,,,,0\n"), HasSubstr("column pack_size"));
  EXPECT_THAT(fault_of(header + "Film,,1,,,,,5\nFilm,,1,,,,,6\n"),
              AllOf(HasSubstr("row 3, column pack_size"), HasSubstr("contradicts row 2")));
}

TEST(StockCsv, SaysWhatIsWrongWithTheWholeTable) {
  EXPECT_THAT(fault_of(""), HasSubstr("empty"));
  EXPECT_THAT(fault_of("item\nFilm\n"), HasSubstr("'on_hand' is missing"));
  EXPECT_THAT(fault_of("item,on_hand,colour\n"), HasSubstr("'colour' is not known"));
  EXPECT_THAT(fault_of("item,on_hand,item\n"), HasSubstr("'item' is there twice"));
  EXPECT_THAT(fault_of("item,on_hand\nFilm,1,2\n"), HasSubstr("row 2 has 3 cells"));
  EXPECT_THAT(fault_of("item,on_hand\n\"Film,1\n"), HasSubstr("never closed"));
  EXPECT_THAT(fault_of("item,on_hand\n\"Film\" x,1\n"), HasSubstr("follows a closing quote"));
}

TEST(WhatIf, ChangesTheDressingOrTheForecast) {
  wound::Case value;
  forecast::Settings settings;
  const WhatIf both("change_every_h=48,service_level_share=0.99,filler_items=Filler sheet A");
  both.apply(value);
  both.apply(settings);
  EXPECT_EQ(value.dressing.change_every_h, 48);
  EXPECT_EQ(value.dressing.filler_items, std::vector<std::string>{"Filler sheet A"});
  EXPECT_EQ(settings.service_level, 0.99);
  EXPECT_TRUE(both.changes_cases());
  EXPECT_FALSE(WhatIf("new_patients_per_week=2").changes_cases());
}

TEST(WhatIf, RefusesWhatIsNoSettingOrOutOfBounds) {
  for (const char* words : {"", "change_every_h", "change_every_h=", "colour=3", "change_every_h=0",
                            "change_every_h=4x", "service_level_share=1"}) {
    EXPECT_THROW(WhatIf{words}, InputError) << words;
  }
}

}  // namespace
}  // namespace drapewright::casefile
