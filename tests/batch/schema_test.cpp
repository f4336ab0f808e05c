#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <nlohmann/json.hpp>

#include "core/casefile/case_json.h"
#include "core/casefile/settings.h"
#include "core/practice/limits.h"
#include "tests/batch/program.h"
#include "tests/support/places.h"

namespace drapewright::batch_tests {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;

const std::string docs = support::project_folder() + "/docs/";

std::vector<fs::path> demo_cases() {
  std::vector<fs::path> files;
  for (const auto& entry : fs::directory_iterator(support::project_folder() + "/demo_cases")) {
    if (entry.path().extension() == ".json") files.push_back(entry.path());
  }
  return files;
}

/// Has a JSON Schema validator (Debian's python3-jsonschema) read the files: an independent judge
/// of what this program writes. Returns what it has to say, nothing when all are valid.
std::string complaints(const std::string& schema, const Folder& folder) {
  const std::string script = support::project_folder() + "/tests/batch/validate.py";
  const std::string out = (folder.path() / "complaints").string();
  const int status = std::system(("python3 '" + script + "' '" + docs + schema + "' '" +
                                  folder.path().string() + "'/*.json >'" + out + "' 2>&1")
                                     .c_str());
  const std::string said = folder.get("complaints");
  return status == 0 ? said : said + "exit status " + std::to_string(status);
}

TEST(Schema, OfCasesHoldsForEveryCaseAsItIsWritten) {
  const Folder folder;
  for (const auto& file : demo_cases()) {
    casefile::write_case(folder.path() / file.filename(), casefile::read_case(file));
  }
  EXPECT_EQ(complaints("case.schema.json", folder), "");
}

TEST(Schema, OfCasesHoldsForTheDemoCases) {
  const Folder folder;
  for (const auto& file : demo_cases()) fs::copy(file, folder.path());
  EXPECT_EQ(complaints("case.schema.json", folder), "");
}

TEST(Schema, OfPlansHoldsForEveryPlan) {
  const Folder folder;
  for (const auto& file : demo_cases()) {
    const Outcome run =
        folder.run({"plan", file.string(), "--json", "--output", file.filename().string()});
    EXPECT_EQ(run.status, 0) << run.err;
  }
  // A wound too small for any filler: no place for the port.
  json tiny = json::parse(plain_case());
  tiny["assessments"][0]["wounds"][0]["outline_cm"] = {{0, 0}, {0.5, 0}, {0.5, 0.5}};
  const Outcome run = folder.run({"plan", "-", "--json", "--output", "tiny.json"}, tiny.dump());
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_TRUE(json::parse(folder.get("tiny.json"))["drapes"][0]["port"]["centre_cm"].is_null());
  EXPECT_EQ(complaints("plan.schema.json", folder), "");
}

json demo_plan(const Folder& folder, const std::string& name) {
  const std::string file = support::project_folder() + "/demo_cases/" + name;
  const Outcome run = folder.run({"plan", file, "--json", "--output", name});
  EXPECT_EQ(run.status, 0) << run.err;
  return json::parse(folder.get(name));
}

TEST(PlanFile, HoldsTheBridgeThatThePortSitsOn) {
  const Folder folder;
  const json plan = demo_plan(folder, "smaller-than-aperture.json");
  const json& drape = plan["drapes"][0];
  const json& port = drape["port"];
  EXPECT_TRUE(port["on_bridge"]);
  EXPECT_EQ(port["bridge"]["line_cm"].back(), port["centre_cm"]);
  EXPECT_EQ(port["bridge"]["pad_diameter_cm"], port["room_cm"]);
  EXPECT_FALSE(port["bridge"]["skin_protection"].empty());
  EXPECT_TRUE(drape["joins"].empty());
  EXPECT_EQ(drape["protection_sheets"].size(), 1u);
}

TEST(PlanFile, HoldsBridgesBetweenPiecesBesideThePort) {
  const Folder folder;
  const json plan = demo_plan(folder, "two-wounds-one-film.json");
  const json& drape = plan["drapes"][0];
  EXPECT_FALSE(drape["port"]["on_bridge"]);
  EXPECT_TRUE(drape["port"]["bridge"].is_null());
  ASSERT_EQ(drape["joins"].size(), 1u);
  EXPECT_EQ(drape["joins"][0]["pad_diameter_cm"], 0);
  EXPECT_EQ(plan["fill"]["piece_count"], 3);  // one in each wound, and the bridge
}

TEST(PlanFile, HoldsPocketsAndTheStripsOfExploredTunnels) {
  const Folder folder;
  const std::string file = support::project_folder() + "/demo_cases/pocket-and-tunnel.json";
  json value = json::parse(std::ifstream(file));
  value["assessments"].back()["wounds"][0]["tunnels"][0]["explored"] = true;
  const Outcome run = folder.run({"plan", "-", "--json", "--output", "p.json"}, value.dump());
  EXPECT_EQ(run.status, 0) << run.err;
  const json plan = json::parse(folder.get("p.json"));
  EXPECT_GT(plan["wounds"][0]["pocket_volume_cm3"], 0);
  EXPECT_TRUE(plan["fill"]["layers"].back()["reaches_into_pockets"]);
  ASSERT_EQ(plan["fill"]["strips"].size(), 1u);
  EXPECT_EQ(plan["fill"]["strips"][0]["clock"], 9);
  EXPECT_EQ(plan["fill"]["piece_count"], 2);
  EXPECT_EQ(complaints("plan.schema.json", folder), "");
}

TEST(Schema, OfForecastsHoldsWithAndWithoutStock) {
  const Folder folder;
  const std::string cases = support::project_folder() + "/demo_cases";
  const Folder stock;
  EXPECT_EQ(stock.run({"forecast", "--stock-template", "stock.csv"}).status, 0);
  const std::vector<std::string> common{"forecast", cases, "--json", "--today", "2026-03-04"};
  auto with_stock = common;
  for (const char* more : {"--stock", "", "--what-if", "change_every_h=48"}) {
    with_stock.push_back(*more != 0 ? more : (stock.path() / "stock.csv").string());
  }
  folder.put("use.json", folder.run(common).out);
  folder.put("stock.json", folder.run(with_stock).out);
  EXPECT_EQ(complaints("forecast.schema.json", folder), "");
}

TEST(Schema, RefusesWhatIsNotACase) {
  const Folder folder;
  json bad = json::parse(plain_case());
  bad["dressing"]["border_cm"] = -1;
  folder.put("bad.json", bad.dump());
  EXPECT_THAT(complaints("case.schema.json", folder), testing::HasSubstr("$.dressing.border_cm"));
}

/// The bounds that the documents promise are those that the reader applies.
TEST(Schema, HasTheBoundsOfTheTableOfLimits) {
  const json schema = json::parse(std::ifstream(docs + "case.schema.json"));
  const json& settings = schema["$defs"]["dressing"]["properties"];
  EXPECT_EQ(settings.size(), casefile::setting_names.size());
  for (const auto& [name, setting] : casefile::settings) {
    const json& member = settings.at(std::string(name));
    const auto& limit = practice::limit(name);
    EXPECT_EQ(member["default"].get<double>(), limit.standard) << name;
    const std::string least = limit.minimum_excluded ? "exclusiveMinimum" : "minimum";
    const std::string most = limit.maximum_excluded ? "exclusiveMaximum" : "maximum";
    EXPECT_EQ(member.value(least, json()), json(limit.minimum)) << name;
    EXPECT_EQ(member.value(most, json()), json(limit.maximum)) << name;
  }
  EXPECT_EQ(schema["properties"]["limb_girth_cm"]["exclusiveMinimum"], 0);
  EXPECT_EQ(schema["properties"]["limb_girth_cm"]["maximum"],
            practice::limit("limb_girth_cm").maximum);
  const json& wound = schema["$defs"]["wound"]["properties"];
  EXPECT_EQ(wound["depth_cm"]["maximum"], practice::limit("depth_cm").maximum);
  EXPECT_EQ(wound["wall_run_in_cm"]["maximum"], practice::limit("wall_run_in_cm").maximum);
}

}  // namespace
}  // namespace drapewright::batch_tests
