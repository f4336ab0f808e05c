#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <charconv>
#include <cstdlib>
#include <nlohmann/json.hpp>

#include "tests/batch/program.h"
#include "tests/support/places.h"

namespace drapewright::batch_tests {
namespace {

namespace fs = std::filesystem;
using nlohmann::json;
using testing::HasSubstr;
using testing::StartsWith;

const std::string scripts = support::project_folder() + "/tests/batch/";

/// What a Python script of this folder writes to standard output.
std::string said_by(const std::string& script, const std::string& arguments, const Folder& folder) {
  const std::string out = (folder.path() / "said").string();
  const int status =
      std::system(("python3 '" + scripts + script + "' " + arguments + " >'" + out + "'").c_str());
  return status == 0 ? folder.get("said") : folder.get("said") + "exit " + std::to_string(status);
}

/// Python's csv module, an independent reader.
json rows_of(const Folder& folder, const std::string& file) {
  return json::parse(said_by("csv_rows.py", "'" + (folder.path() / file).string() + "'", folder));
}

double number(const json& row, const std::string& column) {
  const std::string cell = row.at(column);
  double value = 0;
  const auto end = std::from_chars(cell.data(), cell.data() + cell.size(), value).ptr;
  EXPECT_TRUE(!cell.empty() && end == cell.data() + cell.size()) << column << ": " << cell;
  return value;
}

TEST(ExportCommand, WritesWhatIsAskedFor) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const Outcome all = folder.run({"export", "leg.json", "--fhir", "a.json", "--measures-csv",
                                  "b.csv", "--materials-csv", "c.csv", "--cut-dxf", "d.dxf"});
  EXPECT_EQ(all.status, 0) << all.err;
  EXPECT_EQ(all.out + all.err, "");
  EXPECT_EQ(json::parse(folder.get("a.json"))["resourceType"], "Bundle");
  EXPECT_THAT(folder.get("b.csv"), StartsWith("case,date,wound,"));
  EXPECT_THAT(folder.get("c.csv"), StartsWith("case,date,item,"));
  EXPECT_THAT(folder.get("d.dxf"), HasSubstr("AC1009"));
  const Outcome one = folder.run({"export", "-", "--measures-csv", "-"}, plain_case());
  EXPECT_EQ(one.out, folder.get("b.csv"));
}

TEST(ExportCommand, RefusesWhatWouldBeLost) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const auto refused = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"export", "leg.json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const Outcome run = folder.run(arguments);
    EXPECT_EQ(run.status, 2);
    EXPECT_EQ(lines_of(run.err).size(), 1u) << run.err;
    return run.err;
  };
  EXPECT_THAT(refused({}), HasSubstr("--fhir"));
  EXPECT_THAT(refused({"--fhir", "./leg.json"}), HasSubstr("overwritten"));
  EXPECT_THAT(refused({"--fhir", "x", "--cut-dxf", "x"}), HasSubstr("'x'"));
  EXPECT_THAT(refused({"--fhir", "-", "--cut-dxf", "-"}), HasSubstr("'-'"));
  EXPECT_THAT(refused({"--fhir", "no-such-folder/x"}), HasSubstr("no-such-folder"));
  EXPECT_EQ(folder.get("leg.json"), plain_case());
  EXPECT_FALSE(folder.has("x"));
}

TEST(ExportCommand, WritesNothingWhereAPartCannotBeMade) {
  const Folder folder;
  json tiny = json::parse(plain_case());  // too small for any filler
  tiny["assessments"][0]["wounds"][0]["outline_cm"] = {{0, 0}, {0.5, 0}, {0.5, 0.5}};
  folder.put("tiny.json", tiny.dump());
  const Outcome run = folder.run({"export", "tiny.json", "--fhir", "x", "--cut-dxf", "y"});
  EXPECT_EQ(run.status, 2);
  EXPECT_THAT(run.err, HasSubstr("cuts no sheet"));
  EXPECT_FALSE(folder.has("x"));
  EXPECT_EQ(folder.run({"export", "tiny.json", "--fhir", "x"}).status, 0);
}

void expect_measures_of(const json& plan, const json& rows) {
  ASSERT_GE(rows.size(), plan["wounds"].size());
  const std::size_t first = rows.size() - plan["wounds"].size();
  for (std::size_t i = 0; i < plan["wounds"].size(); ++i) {
    const json& row = rows[first + i];
    const json& wound = plan["wounds"][i];
    EXPECT_EQ(row["case"], plan["label"]);
    EXPECT_EQ(row["wound"], wound["id"]);
    for (const char* column : {"area_cm2", "length_cm", "volume_cm3", "pocket_volume_cm3"}) {
      EXPECT_NEAR(number(row, column), wound[column].get<double>(), 0.0051) << column;
    }
  }
}

void expect_materials_of(const json& plan, const json& rows) {
  ASSERT_EQ(rows.size(), plan["consumables"].size());
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const json& line = plan["consumables"][i];
    EXPECT_EQ(rows[i]["item"], line["item"]);
    EXPECT_NEAR(number(rows[i], "per_course"), line["per_course"].get<double>(), 5e-4);
  }
}

/// In either language: what a spreadsheet is to read as numbers keeps the point.
TEST(ExportCommand, WritesTablesThatAnotherReaderTakes) {
  for (const char* name : {"series-of-three", "pocket-and-tunnel", "two-wounds-one-film"}) {
    const Folder folder;
    const std::string file = demo_case(name).string();
    const json plan = json::parse(folder.run({"plan", file, "--json"}).out);
    for (const char* language : {"en", "de"}) {
      const Outcome run = folder.run({"export", file, "--measures-csv", "m.csv", "--materials-csv",
                                      "c.csv", "--language", language});
      ASSERT_EQ(run.status, 0) << run.err;
      expect_measures_of(plan, rows_of(folder, "m.csv"));
      expect_materials_of(plan, rows_of(folder, "c.csv"));
    }
  }
}

/// The published JSON Schema of FHIR R4 is not in the repository: scripts/fhir_schema.sh fetches it
/// where it can be had.
struct FhirSchema : testing::Test {
  void SetUp() override {
    if (!fs::exists(schema)) GTEST_SKIP() << "no " << schema << ": sh scripts/fhir_schema.sh";
  }
  std::string complaints(const Folder& folder) const {
    return said_by("validate.py", "'" + schema + "#Bundle' '" + folder.path().string() + "'/*.json",
                   folder);
  }

  const std::string schema = support::project_folder() + "/build/fhir/fhir.schema.json";
};

TEST_F(FhirSchema, HoldsForTheBundleOfEveryDemoCase) {
  const Folder folder;
  int cases = 0;
  for (const auto& entry : fs::directory_iterator(support::project_folder() + "/demo_cases")) {
    if (entry.path().extension() != ".json") continue;
    const std::string name = entry.path().filename().string();
    EXPECT_EQ(folder.run({"export", entry.path().string(), "--fhir", name}).status, 0) << name;
    ++cases;
  }
  json bare = json::parse(plain_case());  // no depth, no body site, no exudate
  folder.run({"export", "-", "--fhir", "bare.json"}, bare.dump());
  EXPECT_GE(cases, 13);
  EXPECT_THAT(folder.get("bare.json"), HasSubstr("dataAbsentReason"));
  EXPECT_EQ(complaints(folder), "");
}

TEST_F(FhirSchema, RefusesWhatIsNoBundle) {
  const Folder folder;
  const Outcome run = folder.run({"export", "-", "--fhir", "-"}, plain_case());
  const json good = json::parse(run.out);
  json misspelt = good, empty = good;
  misspelt["entry"][0]["resource"]["statuss"] = "final";
  empty["type"] = "heap";
  for (const json& bad : {misspelt, empty}) {
    folder.put("bad.json", bad.dump());
    EXPECT_THAT(complaints(folder), HasSubstr("bad.json"));
  }
  folder.put("bad.json", good.dump());
  EXPECT_EQ(complaints(folder), "");
}

}  // namespace
}  // namespace drapewright::batch_tests
