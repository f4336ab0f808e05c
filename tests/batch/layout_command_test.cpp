#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "tests/batch/program.h"

namespace drapewright::batch_tests {
namespace {

using nlohmann::json;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using testing::StartsWith;

json plain_job() {
  return json::parse(R"({"name": "squares", "best_published_density_percent": 90,
    "pieces": [[[0, 0], [6, 0], [6, 4], [0, 4]], [[0, 0], [5, 0], [0, 5]],
               {"outer": [[0, 0], [7, 0], [7, 7], [0, 7]],
                "holes": [[[2, 2], [2, 5], [5, 5], [5, 2]]]}],
    "gap_cm": 0.3,
    "sheets": [{"length_cm": 20, "width_cm": 12, "unit_cost": 240, "available": 2},
               {"length_cm": 10, "width_cm": 8, "unit_cost": 80, "available": 8}]})");
}

Outcome lay_out(const json& job, std::vector<std::string> more = {}) {
  std::vector<std::string> arguments{"layout", "-"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  return Folder().run(arguments, job.dump());
}

json answer_of(const json& job, const std::vector<std::string>& more = {}) {
  std::vector<std::string> arguments{"--json", "--steps", "300"};
  arguments.insert(arguments.end(), more.begin(), more.end());
  const Outcome run = lay_out(job, arguments);
  EXPECT_EQ(run.status, 0) << run.err;
  return json::parse(run.out);
}

std::vector<int> pieces_in(const json& answer) {
  std::vector<int> pieces = answer["unplaced"];
  for (const auto& sheet : answer["sheets"]) {
    for (const auto& placement : sheet["placements"]) pieces.push_back(placement["piece"]);
  }
  std::sort(pieces.begin(), pieces.end());
  return pieces;
}

TEST(LayoutCommand, PlacesEveryPieceOnceAndAddsUpTheCost) {
  const json answer = answer_of(plain_job());
  EXPECT_EQ(pieces_in(answer), (std::vector<int>{0, 1, 2}));
  EXPECT_THAT(answer["unplaced"], IsEmpty());
  double cost = 0;
  for (const auto& sheet : answer["sheets"]) cost += sheet["unit_cost"].get<double>();
  EXPECT_EQ(answer["cost"], cost);
  EXPECT_LE(answer["bound"].get<double>(), cost);
  EXPECT_GT(answer["density_percent"].get<double>(), 20);
}

TEST(LayoutCommand, KeepsHolesAndTheGapToTheEdge) {
  const json answer = answer_of(plain_job());
  for (const auto& sheet : answer["sheets"]) {
    for (const auto& placement : sheet["placements"]) {
      EXPECT_THAT(placement["outline_cm"]["holes"], SizeIs(placement["piece"] == 2 ? 1 : 0));
      for (const auto& point : placement["outline_cm"]["outer"]) {
        EXPECT_GE(point[0].get<double>(), 0.3 - 2e-5);
        EXPECT_LE(point[0].get<double>(), sheet["length_cm"].get<double>() - 0.3 + 2e-5);
        EXPECT_GE(point[1].get<double>(), 0.3 - 2e-5);
        EXPECT_LE(point[1].get<double>(), sheet["width_cm"].get<double>() - 0.3 + 2e-5);
      }
    }
  }
}

TEST(LayoutCommand, MakesAStripAsLongAsItCameOut) {
  json job = plain_job();
  job.erase("sheets");
  job["strip_width_cm"] = 8;
  job["edge_gap_cm"] = 0;
  const json answer = answer_of(job);
  ASSERT_THAT(answer["sheets"], SizeIs(1));
  EXPECT_EQ(answer["sheets"][0]["width_cm"], 8);
  EXPECT_EQ(answer["sheets"][0]["length_cm"], answer["cost"]);
  EXPECT_GE(answer["cost"], answer["bound"]);
}

TEST(LayoutCommand, SameSeedAndStepsSameLayout) {
  json a = answer_of(plain_job(), {"--seed", "5"}), b = answer_of(plain_job(), {"--seed", "5"});
  a.erase("seconds");
  b.erase("seconds");
  EXPECT_EQ(a, b);
}

TEST(LayoutCommand, NamesWhatFitsNoSheetAndSplitsItWhenAsked) {
  json job = plain_job();
  job["pieces"].push_back({{0, 0}, {30, 0}, {30, 11}, {0, 11}});
  job["sheets"][0]["available"] = 9;
  EXPECT_EQ(answer_of(job)["unplaced"], json::array({3}));
  EXPECT_THAT(lay_out(job, {"--steps", "100"}).out, HasSubstr("NOT PLACED"));
  const json split = answer_of(job, {"--split"});
  EXPECT_THAT(split["unplaced"], IsEmpty());
  EXPECT_EQ(pieces_in(split), (std::vector<int>{0, 1, 2, 3, 3}));
  ASSERT_THAT(split["seams"], SizeIs(1));
  EXPECT_EQ(split["seams"][0]["piece"], 3);
}

TEST(LayoutCommand, SaysInWordsWhatItCostsAndWhatIsLeft) {
  const Outcome run = lay_out(plain_job(), {"--effort", "0.1"});
  EXPECT_EQ(run.status, 0);
  EXPECT_THAT(run.out, HasSubstr("Cost "));
  EXPECT_THAT(run.out, HasSubstr("leaves "));
  EXPECT_THAT(run.err, IsEmpty());
}

struct BadJob {
  std::string name;
  std::string at;  ///< JSON pointer of the change
  json value;
  std::string said, where;
};

class BadLayoutJob : public testing::TestWithParam<BadJob> {};

TEST_P(BadLayoutJob, IsRefusedWithItsPlace) {
  json job = plain_job();
  job[json::json_pointer(GetParam().at)] = GetParam().value;
  const Outcome run = lay_out(job, {"--json"});
  EXPECT_EQ(run.status, 2);
  EXPECT_THAT(run.out, IsEmpty());
  ASSERT_THAT(lines_of(run.err), SizeIs(1)) << run.err;
  EXPECT_THAT(run.err, StartsWith("-:1:"));
  EXPECT_THAT(run.err, HasSubstr(GetParam().said));
  EXPECT_THAT(run.err, HasSubstr(GetParam().where));
}

INSTANTIATE_TEST_SUITE_P(
    Job, BadLayoutJob,
    testing::Values(
        BadJob{"NegativeGap", "/gap_cm", -1, "gap", "/gap_cm"},
        BadJob{"StripAndSheets", "/strip_width_cm", 10, "sheets and a strip", "/sheets"},
        BadJob{"NoSheets", "/sheets", json::array(), "neither a sheet nor a strip", "-:1:1"},
        BadJob{"SheetWithoutLength", "/sheets/1/length_cm", 0, "sheet 2", "/sheets/1"},
        BadJob{"NegativeCost", "/sheets/0/unit_cost", -3, "sheet 1", "/sheets/0/unit_cost"},
        BadJob{"HalfASheet", "/sheets/0/available", 1.5, "1.5", "/sheets/0/available"},
        BadJob{"TwoPoints", "/pieces/1", json::parse("[[0, 0], [1, 1]]"), "2 points", "/pieces/1"},
        BadJob{"SelfCrossing", "/pieces/0", json::parse("[[0, 0], [4, 4], [4, 0], [0, 6]]"),
               "crosses itself", "/pieces/0"},
        BadJob{"HoleOutside", "/pieces/2/holes/0", json::parse("[[8, 8], [8, 9], [9, 9]]"),
               "piece 3", "/pieces/2/holes"},
        BadJob{"NotAPoint", "/pieces/0/1", "five", "five", "/pieces/0/1"},
        BadJob{"NotAPiece", "/pieces/0", 7, "the number 7", "/pieces/0"},
        BadJob{"NoTurn", "/rotations_deg", json::array(), "no turn", "/rotations_deg"},
        BadJob{"MisspeltMember", "/edge_gap", 0.1, "edge_gap", "/edge_gap"}),
    [](const auto& test) { return test.param.name; });

TEST(LayoutCommand, SelfCrossingIsToldWithItsPoint) {
  json job = plain_job();
  job["pieces"][0] = json::parse("[[0, 0], [4, 4], [4, 0], [0, 4]]");
  EXPECT_THAT(lay_out(job).err, HasSubstr("(2.00, 2.00)"));
}

}  // namespace
}  // namespace drapewright::batch_tests
