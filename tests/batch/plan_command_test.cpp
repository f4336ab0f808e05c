#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>

#include "tests/batch/program.h"
#include "tests/support/places.h"

namespace drapewright::batch_tests {
namespace {

using nlohmann::json;
using testing::AllOf;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;
using testing::StartsWith;

TEST(PlanCommand, WritesThePlanSheet) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const Outcome run = folder.run({"plan", "leg.json", "--pdf", "leg.pdf", "--today", "2026-03-04"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_NE(run.out.find("Plan for"), std::string::npos) << "the summary comes as well";
  folder.run({"pages", "leg.json", "--pdf", "pages.pdf", "--today", "2026-03-04"});
  EXPECT_EQ(folder.get("leg.pdf"), folder.get("pages.pdf"));
  EXPECT_EQ(folder.run({"plan", "leg.json", "--pdf", "leg.json"}).status, 2);
}

TEST(PlanCommand, GivesATextSummary) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const Outcome run = folder.run({"plan", "leg.json", "--today", "2026-03-02"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  EXPECT_THAT(run.out, AllOf(StartsWith("Plan for demo, assessed on 2026-03-02\n"),
                             HasSubstr("\nFindings: "), HasSubstr("\nWound A\n"),
                             HasSubstr("  Area              40.0 +/- 2.6 cm2\n"),
                             HasSubstr("\nFiller: 1 piece to put in, and to count out again\n"),
                             HasSubstr("\nFilm over wound A\n"),
                             HasSubstr("\nMaterials: 5 applications over the course\n")));
  for (const auto& line : lines_of(run.out)) EXPECT_LE(line.size(), 80u) << line;
}

std::string summary_of_demo(const std::string& name) {
  const Folder folder;
  const Outcome run = folder.run({"plan", support::project_folder() + "/demo_cases/" + name});
  EXPECT_EQ(run.status, 0) << run.err;
  return run.out;
}

TEST(PlanSummary, TellsOfTheBridgeToThePortAndOfTheRoomOnItsPad) {
  const std::string text = summary_of_demo("smaller-than-aperture.json");
  EXPECT_THAT(text, HasSubstr("Filler: 2 pieces"));
  EXPECT_THAT(text, HasSubstr("  Count             1 in layers and 1 bridge\n"));
  EXPECT_THAT(text, HasSubstr("  Bridge to port    1.8 cm long, 3 cm wide, pad 3 cm across"));
  EXPECT_THAT(text, HasSubstr("  Shared film 1     Film sheet 20 x 20 cm: Film 1; Film under"));
  EXPECT_THAT(text, HasSubstr("  Under the bridge  Film sheet 20 x 20 cm, shared film sheet 1"));
  EXPECT_THAT(text, HasSubstr("room at the port 3.0 cm: it"));
}

TEST(PlanSummary, TellsOfBridgesThatJoin) {
  const std::string text = summary_of_demo("two-wounds-one-film.json");
  EXPECT_THAT(text, HasSubstr("  Count             2 in layers and 1 bridge\n"));
  EXPECT_THAT(text, HasSubstr("  Bridge, joining   2.7 cm long, 3 cm wide, from"));
}

TEST(PlanSummary, TellsOfPocketsAndStrips) {
  json value =
      json::parse(std::ifstream(support::project_folder() + "/demo_cases/pocket-and-tunnel.json"));
  value["assessments"].back()["wounds"][0]["tunnels"][0]["explored"] = true;
  value["dressing"]["port_places_cm"] = {{5.5, 4}};
  const Folder folder;
  const Outcome run = folder.run({"plan", "-"}, value.dump());
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(run.out, HasSubstr("  Pockets           18.4 cm3 more"));
  EXPECT_THAT(run.out, HasSubstr("layer 1 reaches under the edge"));
  EXPECT_THAT(run.out, HasSubstr("  Count             1 in layers and 1 strip\n"));
  EXPECT_THAT(run.out, HasSubstr("  Strip             wound A, tunnel at 9 o'clock: 5.5 cm long"));
  EXPECT_THAT(run.out, HasSubstr("centre at (5.5, 4.0) cm, a place chosen by hand"));
}

TEST(PlanCommand, GivesThePlanAsJson) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const Outcome run = folder.run({"plan", "leg.json", "--json"});
  EXPECT_EQ(run.status, 0) << run.err;
  const json plan = json::parse(run.out);
  EXPECT_EQ(plan["drapewright_plan"], 1);
  EXPECT_NEAR(plan["wounds"][0]["area_cm2"].get<double>(), 40, 1e-9);
  // Steiner: A + P m + pi m2 for the 8 x 5 rectangle grown by 5; film is never too small, nor
  // larger than the tolerance of an offset allows.
  const double film = 40 + 26 * 5 + 3.14159265358979 * 25;
  const double area = plan["drapes"][0]["area_cm2"];
  EXPECT_GE(area, film);
  EXPECT_LE(area, film + 0.005 * (26 + 2 * 3.15 * 5));
}

TEST(PlanCommand, ReadsStandardInput) {
  const Outcome run = Folder().run({"plan", "-", "--json"}, plain_case());
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_EQ(json::parse(run.out)["label"], "demo");
}

TEST(PlanCommand, GivesAnArrayOfSeveralPlans) {
  const Folder folder;
  folder.put("a.json", plain_case());
  const Outcome two = folder.run({"plan", "a.json", "a.json", "--json"});
  EXPECT_EQ(two.status, 0) << two.err;
  EXPECT_THAT(json::parse(two.out), SizeIs(2));
  const Outcome none = folder.run({"plan", "b.json", "c.json", "--json"});
  EXPECT_EQ(none.status, 2);
  EXPECT_THAT(json::parse(none.out), IsEmpty());
}

TEST(PlanCommand, GivesOnePlanALineInTheOrderOfTheCases) {
  const Folder folder;
  std::vector<std::string> arguments{"plan", "--json-lines", "--jobs", "3"};
  for (int i = 0; i < 20; ++i) {
    json value = json::parse(plain_case());
    value["label"] = "case " + std::to_string(i);
    arguments.push_back(std::to_string(i) + ".json");
    folder.put(arguments.back(), value.dump());
  }
  const Outcome run = folder.run(arguments);
  EXPECT_EQ(run.status, 0) << run.err;
  const auto lines = lines_of(run.out);
  ASSERT_THAT(lines, SizeIs(20));
  for (std::size_t i = 0; i < lines.size(); ++i) {
    EXPECT_EQ(json::parse(lines[i])["label"], "case " + std::to_string(i));
  }
  arguments[3] = "1";
  EXPECT_EQ(folder.run(arguments).out, run.out);
}

std::string labelled(const std::string& label) {
  json value = json::parse(plain_case());
  value["label"] = label;
  return value.dump();
}

std::vector<std::string> labels_in(const std::string& json_lines) {
  std::vector<std::string> labels;
  for (const auto& line : lines_of(json_lines)) labels.push_back(json::parse(line)["label"]);
  return labels;
}

TEST(PlanCommand, TakesAFolderForTheCasesInIt) {
  const Folder folder;
  std::filesystem::create_directories(folder.path() / "ward/old.json");
  folder.put("ward/b.json", labelled("b"));
  folder.put("ward/a.json", labelled("a"));
  folder.put("ward/notes.txt", "no case");
  folder.put("ward/old.json/c.json", labelled("c"));
  const Outcome run = folder.run({"plan", "ward", "--json-lines"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(labels_in(run.out), testing::ElementsAre("a", "b"));
  const Outcome one = folder.run({"plan", "ward/old.json", "--json"});
  EXPECT_THAT(json::parse(one.out), SizeIs(1)) << "an array, however many lie in the folder";
  EXPECT_EQ(folder.run({"plan", "ward", "--svg", "a.svg"}).status, 2);
}

TEST(PlanCommand, TakesAListOfCases) {
  const Folder folder;
  folder.put("a.json", labelled("a"));
  folder.put("b.json", labelled("b"));
  folder.put("list", "b.json\r\n\na.json");
  for (const std::string list : {"list", "-"}) {
    const Outcome run = folder.run({"plan", "--list", list, "--json-lines"}, folder.get("list"));
    EXPECT_EQ(run.status, 0) << run.err;
    EXPECT_THAT(labels_in(run.out), testing::ElementsAre("b", "a"));
  }
  folder.put("empty", "\n");
  EXPECT_EQ(folder.run({"plan", "--list", "empty"}).err,
            "empty: the list names no case file; expected one file or folder a line\n");
  EXPECT_EQ(folder.run({"plan", "-", "--list", "-"}, plain_case()).status, 2);
  EXPECT_EQ(folder.run({"plan"}).status, 2) << "nothing to plan";
}

TEST(PlanCommand, PutsThePlanIntoAFileWhole) {
  const Folder folder;
  folder.put("a.json", plain_case());
  folder.put("plan.json", "old");
  EXPECT_EQ(folder.run({"plan", "none.json", "--json", "--output", "plan.json"}).status, 2);
  EXPECT_EQ(folder.get("plan.json"), "old");
  const Outcome run = folder.run({"plan", "a.json", "--json", "--output", "plan.json"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(run.out, IsEmpty());
  EXPECT_EQ(json::parse(folder.get("plan.json"))["label"], "demo");
}

TEST(PlanCommand, SaysWhenItCannotWrite) {
  const Folder folder;
  folder.put("a.json", plain_case());
  for (const std::vector<std::string>& arguments : {
           std::vector<std::string>{"plan", "a.json", "--output", "none/a.txt"},
           {"plan", "a.json", "--output", "/dev/full"},
           {"plan", "a.json", "--svg", "none/a.svg"},
           {"plan", "a.json", "--png", "none/a.png"},
       }) {
    const Outcome run = folder.run(arguments);
    EXPECT_EQ(run.status, 2);
    EXPECT_THAT(lines_of(run.err), SizeIs(1)) << run.err;
    EXPECT_THAT(run.err, HasSubstr("; expected "));
  }
}

TEST(PlanCommand, DrawsPictures) {
  const Folder folder;
  const Outcome run = folder.run({"plan", demo_case("traced-150-points").string(), "--svg", "a.svg",
                                  "--png", "a.png", "--dpi", "60"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(run.err, IsEmpty());
  EXPECT_THAT(run.out, StartsWith("Plan for "));
  EXPECT_THAT(folder.get("a.svg"), AllOf(StartsWith("<?xml"), HasSubstr("</svg>")));
  EXPECT_THAT(folder.get("a.png"), StartsWith("\x89PNG\r\n\x1A\n"));
  const Outcome piped = folder.run({"plan", demo_case("traced-150-points").string(), "--svg", "-"});
  EXPECT_EQ(piped.out, folder.get("a.svg"));
}

TEST(PlanCommand, DrawsTheSectionAlongALine) {
  const Folder folder;
  const std::string file = demo_case("deep-sloping-wall").string();
  EXPECT_EQ(folder.run({"plan", file, "--section", "usual.svg"}).status, 0);
  EXPECT_THAT(folder.get("usual.svg"), AllOf(StartsWith("<?xml"), HasSubstr("depth 4.5 cm")));
  const Outcome run = folder.run(
      {"plan", file, "--section", "a.svg", "--section-line=-300,-200,-300,-250", "--png", "a.png"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(folder.get("a.svg"), HasSubstr("No wound lies on this line."));
  EXPECT_EQ(folder.run({"plan", file, "--section", "a.png", "--dpi", "60"}).status, 0);
  EXPECT_THAT(folder.get("a.png"), StartsWith("\x89PNG\r\n\x1A\n"));
}

TEST(PlanCommand, RefusesASectionLineThatIsNone) {
  const Folder folder;
  const std::string file = demo_case("plain-heel").string();
  for (const std::vector<std::string>& arguments :
       {std::vector<std::string>{"--section-line=0,0,1,1"},
        {"--section", "a.svg", "--section-line=1,1,1,1"},
        {"--section", "a.svg", "--section-line=1,1,2"},
        {"--section", "a.svg", "--section-line=1,1,2,x"},
        {"--section", "a.svg", "--section-line=1,1,2,nan"}}) {
    std::vector<std::string> all{"plan", file};
    all.insert(all.end(), arguments.begin(), arguments.end());
    const Outcome run = folder.run(all);
    EXPECT_EQ(run.status, 2);
    EXPECT_THAT(lines_of(run.err), SizeIs(1)) << run.err;
    EXPECT_THAT(run.out, IsEmpty());
  }
}

TEST(PlanCommand, SaysHowOldTheAssessmentIsWhenItKnowsTheDay) {
  const Folder folder;
  folder.put("a.json", plain_case());  // of 2 March 2026
  const auto run = [&](const std::string& today) {
    return folder.run({"plan", "a.json", "--today", today}).out;
  };
  EXPECT_THAT(run("2026-04-01"), HasSubstr("30 days old"));
  EXPECT_THAT(run("2026-03-02"), testing::Not(HasSubstr("days old")));
  EXPECT_THAT(run(""), testing::Not(HasSubstr("days old")));
}

TEST(PlanCommand, EqualInputGivesEqualOutput) {
  const std::string file = demo_case("island-of-skin").string();
  const std::vector<std::string> arguments{"plan", file, "--json", "--today", ""};
  EXPECT_EQ(Folder().run(arguments).out, Folder().run(arguments).out);
}

// The sheets to open -----------------------------------------------------------------------------

TEST(PlanCut, StandsInTheSummaryWithWhatElseCouldBeOpened) {
  const std::string text = summary_of_demo("plain-heel.json");
  EXPECT_THAT(text, HasSubstr("\nFiller sheets to open, for one application\n"));
  EXPECT_THAT(text, HasSubstr("  > Any of 3 sizes"));
  EXPECT_THAT(text, HasSubstr("    Filler sheet 30 x 20 x "));
  EXPECT_THAT(text, HasSubstr("best possible"));
  EXPECT_THAT(text, HasSubstr("local policy"));
  for (const auto& line : lines_of(text)) EXPECT_LE(line.size(), 80u) << line;
}

TEST(PlanCut, FollowsTheSheetsThatTheCaseNames) {
  const Folder folder;
  json value = json::parse(plain_case());
  const auto opened = [&] {
    folder.put("leg.json", value.dump());
    const Outcome run = folder.run({"plan", "leg.json", "--json"});
    EXPECT_EQ(run.status, 0) << run.err;
    return json::parse(run.out)["cut_layout"][0]["item"].get<std::string>();
  };
  const std::string cheapest = opened();
  std::string other;
  const json plan = json::parse(folder.run({"plan", "leg.json", "--json"}).out);
  for (const auto& choice : plan["sheet_comparison"][0]["choices"]) {
    if (choice["items"].size() == 1 && choice["items"][0] != cheapest) other = choice["items"][0];
  }
  ASSERT_NE(other, "");
  value["dressing"]["filler_items"] = json::array({other});
  EXPECT_EQ(opened(), other);
}

TEST(PlanCut, IsDrawnToScale) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const Outcome run = folder.run({"plan", "leg.json", "--cut", "sheets.svg", "--cut-scale", "10"});
  EXPECT_EQ(run.status, 0) << run.err;
  EXPECT_THAT(run.out, StartsWith("Plan for demo"));
  EXPECT_THAT(folder.get("sheets.svg"), HasSubstr("1:1 (life size)"));
  EXPECT_THAT(folder.get("sheets.svg"), HasSubstr(">1.1</text>"));
}

TEST(PlanCut, EffortGivesTheSameOrABetterCut) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  const auto cost = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"plan", "leg.json", "--json"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    const json plan = json::parse(folder.run(arguments).out);
    return plan["sheet_comparison"][0]["choices"][0]["cost"].get<double>();
  };
  EXPECT_LE(cost({"--effort", "0.1"}), cost({}));
}

TEST(PlanCut, TakesNoCasesPlace) {
  const Folder folder;
  folder.put("leg.json", plain_case());
  EXPECT_EQ(folder.run({"plan", "leg.json", "--cut", "leg.json"}).status, 2);
  EXPECT_EQ(folder.run({"plan", "leg.json", "--cut", "-", "--svg", "-"}).status, 2);
}

}  // namespace
}  // namespace drapewright::batch_tests
