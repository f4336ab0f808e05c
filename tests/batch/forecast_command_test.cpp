#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/batch/program.h"

namespace drapewright::batch_tests {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

const std::string stock =
    "item,on_hand,expires,on_order,due,pack_size,lead_days,unit_cost\n"
    "Port with tubing,2,2026-12-31,,,5,4,14\n"
    "Port with tubing,,,3,2026-03-06,,,\n"
    "Film sheet 20 x 20 cm,50,2026-03-10,,,10,4,6\n";

json case_with(const std::string& label, double change_every_h) {
  json value = json::parse(plain_case());
  value["label"] = label;
  value["dressing"]["change_every_h"] = change_every_h;
  return value;
}

/// Two courses of 14 days that start with the forecast, at 72 h and at 48 h.
class ForecastCommand : public testing::Test {
 protected:
  ForecastCommand() {
    std::filesystem::create_directory(folder_.path() / "cases");
    folder_.put("cases/a.json", case_with("first", 72).dump());
    folder_.put("cases/b.json", case_with("second", 48).dump());
    folder_.put("stock.csv", stock);
  }

  Outcome run(std::vector<std::string> more = {}) const {
    std::vector<std::string> arguments{"forecast", "cases", "--today", "2026-03-02"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return folder_.run(arguments);
  }
  /// Nothing is left to chance but what a test asks for.
  json certain(std::vector<std::string> more = {}) const {
    std::vector<std::string> arguments{
        "--json", "--extra-dressings-per-week", "0", "--early-end-per-week",
        "0",      "--extension-share",          "0"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Outcome outcome = run(arguments);
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    return json::parse(outcome.out);
  }

  Folder folder_;
};

json item(const json& forecast, const std::string& name) {
  for (const auto& one : forecast["items"]) {
    if (one["item"] == name) return one;
  }
  ADD_FAILURE() << "no item " << name;
  return {};
}

// 14 days at 72 h are 5 applications, at 48 h 7. Calculated.
TEST_F(ForecastCommand, AddsUpTheCoursesOfAFolder) {
  const json forecast = certain({"--weeks", "3"});
  const json port = item(forecast, "Port with tubing");
  EXPECT_EQ(port["total"]["mean"], 12);
  EXPECT_EQ(port["total"]["standard_deviation"], 0);
  EXPECT_EQ(port["weeks"].size(), 3u);
  EXPECT_EQ(port["weeks"][0]["mean"], 3 + 4);
  EXPECT_EQ(port["weeks"][2]["mean"], 0);
  EXPECT_EQ(forecast["patients"], 2);
  EXPECT_EQ(forecast["cases_read"][1]["label"], "second");
  EXPECT_EQ(forecast["cases_read"][1]["dressings"], 7);
}

// Days 0 to 10 for 4 days of delivery and 7 to the next review: changes on days 0, 3, 6, 9 and on
// 0, 2, 4, 6, 8, 10 make 10 ports; 2 on hand, 3 due: 5 missing, one pack of 5 at 14 each.
TEST_F(ForecastCommand, OrdersWhatIsMissing) {
  const json order = item(certain({"--stock", "stock.csv"}), "Port with tubing")["order"];
  EXPECT_EQ(order["need"], 10);
  EXPECT_EQ(order["on_hand"], 2);
  EXPECT_EQ(order["on_order"], 3);
  EXPECT_EQ(order["packs"], 1);
  EXPECT_EQ(order["quantity"], 5);
  EXPECT_EQ(order["cost"], 70);
  EXPECT_THAT(order["arithmetic"].get<std::string>(), HasSubstr("10 - 5 = 5 missing"));
}

TEST_F(ForecastCommand, KeepsTheShelfInBalance) {
  const Outcome outcome = run({"--json", "--stock", "stock.csv", "--new-patients-per-week", "1"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  for (const auto& one : json::parse(outcome.out)["items"]) {
    if (!one.contains("shelf")) continue;
    const json& shelf = one["shelf"];
    EXPECT_NEAR(
        shelf["used"].get<double>() + shelf["left"].get<double>() + shelf["wasted"].get<double>(),
        shelf["start"].get<double>() + shelf["received"].get<double>(), 1e-6);
  }
}

// Two ports are there and three come on day 4. The first dressings of both courses take the two,
// the second course's next on day 2, 2026-03-04, finds none.
TEST_F(ForecastCommand, SaysOnWhichDayAnItemRunsOut) {
  const json shelf = item(certain({"--stock", "stock.csv"}), "Port with tubing")["shelf"];
  ASSERT_EQ(shelf["run_out"].size(), 5u);
  for (const auto& one : shelf["run_out"]) EXPECT_EQ(one["date"], "2026-03-04") << one["chance"];
  EXPECT_EQ(shelf["run_out_early"], "2026-03-08");
}

TEST_F(ForecastCommand, IsTheSameEveryTimeAndWithAnyNumberOfJobs) {
  const auto text = [&](const char* jobs) {
    return run({"--json", "--jobs", jobs, "--new-patients-per-week", "2"}).out;
  };
  EXPECT_EQ(text("1"), text("1"));
  EXPECT_EQ(text("1"), text("2"));
}

// Two a week, each 7 dressings at 48 h in 14 days once it is steady; at 72 h 5. Calculated.
TEST_F(ForecastCommand, LetsNewPatientsBeLikeChosenCases) {
  json value = case_with("over", 48);
  value["applications"] = {{{"date", "2025-01-01"}, {"pieces_placed", 1}}};
  folder_.put("often.json", value.dump());
  const std::vector<std::string> more{"--weeks", "8", "--new-patients-per-week", "2"};
  auto like = more;
  like.insert(like.end(), {"--new-patients-like", "often.json", "--what-if", "change_every_h=72"});
  const json chosen = certain(like);
  EXPECT_EQ(chosen["profiles"], 1);
  EXPECT_NEAR(item(chosen, "Port with tubing")["weeks"][7]["mean"].get<double>(), 14, 1e-9);
  const json alternative = item(chosen["what_if"][0], "Port with tubing");
  EXPECT_NEAR(alternative["weeks"][7]["mean"].get<double>(), 10, 1e-9);
  const json mixed = item(certain(more), "Port with tubing");
  EXPECT_NEAR(mixed["weeks"][7]["mean"].get<double>(), 12, 1e-9);
  EXPECT_THAT(run(like).out, HasSubstr("New patients: 2 a week, like 1 chosen case."));
}

// The order list that docs/forecast.md works out step by step.
TEST_F(ForecastCommand, OrdersWhatTheNotesWorkOutByHand) {
  folder_.put("stock.csv",
              "item,on_hand,expires,on_order,due,pack_size,lead_days,unit_cost,minimum\n"
              "Port with tubing,6,,,,5,4,14,2\n"
              "Film sheet 20 x 20 cm,12,2026-03-05,,,10,4,6,\n"
              "Film sheet 20 x 20 cm,,,10,2026-03-09,,,,\n"
              "Canister 300 mL,4,,,,4,3,18,\n");
  std::vector<std::string> arguments{"forecast"};
  for (const char* name : {"plain-heel", "narrow-arm", "no-port-zone"}) {
    arguments.push_back(demo_case(name).string());
  }
  for (const char* word :
       {"--stock", "stock.csv", "--today", "2026-03-02", "--weeks", "4", "--early-end-per-week",
        "0", "--extension-share", "0", "--json"}) {
    arguments.emplace_back(word);
  }
  const Outcome outcome = folder_.run(arguments);
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  const json forecast = json::parse(outcome.out);
  const auto order = [&](const std::string& name) { return item(forecast, name)["order"]; };
  EXPECT_EQ(order("Port with tubing")["need"], 19);
  EXPECT_EQ(order("Port with tubing")["reorder_point"], 11);
  EXPECT_NEAR(order("Port with tubing")["textbook_reorder_point"].get<double>(), 8.74, 0.005);
  EXPECT_EQ(order("Port with tubing")["cost"], 210);
  EXPECT_EQ(order("Film sheet 20 x 20 cm")["need"], 12);
  EXPECT_EQ(order("Film sheet 20 x 20 cm")["expiring"], 8);
  EXPECT_EQ(order("Film sheet 20 x 20 cm")["packs"], 0);
  EXPECT_EQ(order("Canister 300 mL")["need"], 6);
  EXPECT_EQ(order("Canister 300 mL")["cost"], 72);
  EXPECT_EQ(forecast["order_cost"], 282);
}

TEST_F(ForecastCommand, RefusesNewPatientsLikeNobody) {
  EXPECT_EQ(run({"--new-patients-like", "cases/a.json"}).status, 2);
  const Outcome none =
      run({"--new-patients-per-week", "2", "--new-patients-like", "cases/none.json"});
  EXPECT_EQ(none.status, 2);
  EXPECT_THAT(none.out, IsEmpty());
  EXPECT_THAT(none.err, HasSubstr("none.json"));
}

TEST_F(ForecastCommand, PutsAlternativesSideBySide) {
  const json forecast =
      certain({"--what-if", "change_every_h=48", "--what-if", "service_level_share=0.99"});
  ASSERT_EQ(forecast["what_if"].size(), 2u);
  EXPECT_EQ(forecast["what_if"][0]["change"], "change_every_h=48");
  EXPECT_EQ(item(forecast["what_if"][0], "Port with tubing")["total"]["mean"], 14);
  EXPECT_EQ(forecast["what_if"][1]["service_level"], 0.99);
  const Outcome words = run({"--what-if", "change_every_h=48"});
  EXPECT_THAT(words.out, HasSubstr("WHAT IF"));
}

TEST_F(ForecastCommand, WritesItsTables) {
  const Outcome outcome = run({"--stock", "stock.csv", "--csv", "use.csv", "--orders", "orders.csv",
                               "--pick-list", "picks.csv", "--cases", "cases.csv", "--weeks", "4"});
  ASSERT_EQ(outcome.status, 0) << outcome.err;
  const std::size_t used = json::parse(run({"--json"}).out)["items"].size();
  EXPECT_EQ(lines_of(folder_.get("use.csv")).size(), 1 + used * 4);
  EXPECT_EQ(lines_of(folder_.get("orders.csv")).size(), 3u);
  EXPECT_THAT(folder_.get("picks.csv"), HasSubstr("Port with tubing,port,"));
  EXPECT_EQ(lines_of(folder_.get("cases.csv")).size(), 3u);
  EXPECT_THAT(outcome.out, HasSubstr("ORDERS"));
  EXPECT_THAT(outcome.out, HasSubstr("PICK LIST"));
}

TEST_F(ForecastCommand, ReadsItsOwnTemplate) {
  EXPECT_EQ(folder_.run({"forecast", "--stock-template", "mine.csv"}).status, 0);
  const Outcome outcome = run({"--stock", "mine.csv"});
  EXPECT_EQ(outcome.status, 0) << outcome.err;
  EXPECT_THAT(outcome.out, Not(HasSubstr("not on the stock list")));
}

TEST_F(ForecastCommand, GoesOnWithoutABrokenFile) {
  folder_.put("cases/broken.json", "{");
  const Outcome outcome = run({"--json"});
  EXPECT_EQ(outcome.status, 2);
  EXPECT_THAT(outcome.err, HasSubstr("broken.json:1:"));
  EXPECT_EQ(json::parse(outcome.out)["cases"], 2);
}

TEST_F(ForecastCommand, SaysRowAndColumnOfAFaultyStockList) {
  folder_.put("stock.csv", "item,on_hand\nFilm,many\n");
  const Outcome outcome = run({"--stock", "stock.csv"});
  EXPECT_EQ(outcome.status, 2);
  EXPECT_THAT(outcome.out, IsEmpty());
  EXPECT_EQ(lines_of(outcome.err).size(), 1u);
  EXPECT_THAT(outcome.err, HasSubstr("stock.csv:2:6: row 2, column on_hand: 'many'"));
}

TEST_F(ForecastCommand, RefusesWhatItCannotUse) {
  for (const std::vector<std::string>& more : {std::vector<std::string>{"--weeks", "0"},
                                               {"--service-level", "1"},
                                               {"--what-if", "colour=3"},
                                               {"--today", ""},
                                               {"--stock", "none.csv"}}) {
    const Outcome outcome = run(more);
    EXPECT_EQ(outcome.status, 2) << more[0];
    EXPECT_EQ(lines_of(outcome.err).size(), 1u) << outcome.err;
  }
  EXPECT_EQ(folder_.run({"forecast"}).status, 2);
}

TEST_F(ForecastCommand, ComparesWhatWasRecorded) {
  json value = case_with("recorded", 72);
  value["applications"] = {{{"date", "2026-02-24"}, {"pieces_placed", 1}},
                           {{"date", "2026-02-26"}, {"pieces_placed", 1}},
                           {{"date", "2026-02-28"}, {"pieces_placed", 1}},
                           {{"date", "2026-03-02"}, {"pieces_placed", 1}}};
  folder_.put("cases/c.json", value.dump());
  const json recorded = certain()["recorded"];
  EXPECT_EQ(recorded["days"], 6);
  EXPECT_EQ(recorded["recorded"], 3);
  EXPECT_EQ(recorded["planned"], 2);
  EXPECT_DOUBLE_EQ(recorded["bias"].get<double>(), 0.5);
  EXPECT_NEAR(recorded["extra_dressings_per_week"]["value"].get<double>(), 7.0 / 6, 1e-12);
}

}  // namespace
}  // namespace drapewright::batch_tests
