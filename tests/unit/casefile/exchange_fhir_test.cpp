#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "core/casefile/case_json.h"
#include "core/casefile/exchange.h"
#include "core/geometry/shapes.h"
#include "tests/support/example_case.h"

namespace drapewright::casefile {
namespace {

using nlohmann::json;

wound::Assessment seen_on(const std::string& date, double length_cm, double width_cm) {
  wound::Wound wound{.id = "A", .outline_cm = geometry::ellipse(length_cm, width_cm)};
  wound.depth_cm = 2;
  return {.date = date, .wounds = {wound}};
}

wound::Case two_visits() {
  wound::Case value = case_from_json(support::example_case());
  value.label = "leg 7";
  value.body_site = "left calf";
  value.assessments = {seen_on("2026-03-02", 8, 5), seen_on("2026-03-30", 6.4, 4)};
  return value;
}

json bundle_of(const wound::Case& value) {
  const auto plan = dressing::plan_dressing(value);
  return json::parse(fhir_bundle(value, measures_over_time(value, plan)));
}

std::vector<json> observations(const json& bundle) {
  std::vector<json> all;
  for (const json& entry : bundle.at("entry")) all.push_back(entry.at("resource"));
  return all;
}

std::string code_of(const json& observation) {
  const json& code = observation.at("code");
  return code.contains("coding") ? code["coding"].at(0).at("code").get<std::string>() : "";
}

/// Those with this LOINC code, in the bundle's order.
std::vector<json> coded(const json& bundle, const std::string& loinc) {
  std::vector<json> found;
  for (const json& one : observations(bundle)) {
    if (code_of(one) == loinc) found.push_back(one);
  }
  return found;
}

double value_of(const json& observation) { return observation.at("valueQuantity").at("value"); }

TEST(FhirBundle, HoldsASetOfMeasuresForEveryAssessment) {
  const json bundle = bundle_of(two_visits());
  EXPECT_EQ(bundle["resourceType"], "Bundle");
  EXPECT_EQ(bundle["type"], "collection");
  const auto length = coded(bundle, "39126-8"), width = coded(bundle, "39125-0");
  const auto area = coded(bundle, "89260-4"), depth = coded(bundle, "39127-6");
  ASSERT_EQ(area.size(), 2u);
  EXPECT_EQ(area[0]["effectiveDateTime"], "2026-03-02");
  EXPECT_EQ(area[1]["effectiveDateTime"], "2026-03-30");
  EXPECT_NEAR(value_of(area[0]), 31.4159, 0.0051);  // pi/4 x 8 x 5
  EXPECT_NEAR(value_of(area[1]), 20.1062, 0.0051);
  EXPECT_NEAR(value_of(length.at(0)), 8, 0.0051);
  EXPECT_NEAR(value_of(length.at(1)), 6.4, 0.0051);
  EXPECT_NEAR(value_of(width.at(1)), 4, 0.0051);
  EXPECT_EQ(value_of(depth.at(1)), 2);
  EXPECT_NEAR(value_of(coded(bundle, "94083-3").at(0)), 62.83, 0.02);  // straight walls
  EXPECT_EQ(area[0]["bodySite"]["text"], "left calf, wound A");
  for (const json& one : observations(bundle)) EXPECT_EQ(one["status"], "final");
}

/// Every code with the unit of UCUM that it is given in.
TEST(FhirBundle, HasCodesAndUnitsOfOpenStandards) {
  wound::Case value = two_visits();
  value.current().exudate_ml_per_day = 60;
  value.current().wounds[0].undermining = {{.from_clock = 10, .to_clock = 2, .extent_cm = 1.5}};
  value.current().wounds[0].tunnels = {{.clock = 9, .length_cm = 3}};
  std::map<std::string, std::string> units;
  for (const json& one : observations(bundle_of(value))) {
    if (!code_of(one).empty()) {
      EXPECT_EQ(one["code"]["coding"][0]["system"], "http://loinc.org");
    }
    if (!one.contains("valueQuantity")) continue;
    EXPECT_EQ(one["valueQuantity"]["system"], "http://unitsofmeasure.org");
    units[code_of(one)] = one["valueQuantity"]["code"];
  }
  const std::map<std::string, std::string> expected{
      {"39126-8", "cm"},  {"39125-0", "cm"},   {"39127-6", "cm"},
      {"89260-4", "cm2"}, {"94083-3", "cm3"},  {"72293-4", "cm"},
      {"72296-7", "cm"},  {"72291-8", "mL/d"}, {"", "mm[Hg]"}};
  EXPECT_EQ(units, expected);
}

TEST(FhirBundle, SaysWhereUnderminingAndTunnelsLie) {
  wound::Case value = two_visits();
  value.current().wounds[0].undermining = {{.from_clock = 10, .to_clock = 2, .extent_cm = 1.5},
                                           {.from_clock = 12, .to_clock = 12, .extent_cm = 0.8},
                                           {.from_clock = 3, .to_clock = 4.5, .extent_cm = 1}};
  value.current().wounds[0].tunnels = {{.clock = 9, .length_cm = 3}, {.clock = 12, .length_cm = 2}};
  const json bundle = bundle_of(value);
  const auto pockets = coded(bundle, "72293-4"), tunnels = coded(bundle, "72296-7");
  ASSERT_EQ(pockets.size(), 3u);
  ASSERT_EQ(tunnels.size(), 2u);
  EXPECT_EQ(value_of(pockets[0]), 1.5);
  const auto range = [](const json& pocket) {
    const json& place = pocket.at("component").at(0);
    EXPECT_EQ(code_of(place), "72294-2");
    EXPECT_EQ(place["valueRange"]["low"]["code"], "deg");
    return std::pair<double, double>(place["valueRange"]["low"]["value"],
                                     place["valueRange"]["high"]["value"]);
  };
  // A range may not end below its beginning, so it passes 360 where it passes 12 o'clock.
  EXPECT_EQ(range(pockets[0]), std::pair(300.0, 420.0));
  EXPECT_EQ(range(pockets[1]), std::pair(0.0, 360.0));
  EXPECT_EQ(range(pockets[2]), std::pair(90.0, 135.0));
  EXPECT_EQ(code_of(tunnels[0]["component"][0]), "72297-5");
  EXPECT_EQ(value_of(tunnels[0]["component"][0]), 270);
  EXPECT_EQ(value_of(tunnels[1]["component"][0]), 0);
  EXPECT_THAT(tunnels[0]["method"]["text"].get<std::string>(), testing::HasSubstr("to the head"));
}

TEST(FhirBundle, SaysWhatIsAbsentInsteadOfAValue) {
  wound::Case value = two_visits();
  value.current().wounds[0].depth_cm = 0;
  const json bundle = bundle_of(value);
  for (const char* loinc : {"39127-6", "94083-3"}) {
    const auto all = coded(bundle, loinc);
    ASSERT_EQ(all.size(), 2u);
    EXPECT_TRUE(all[0].contains("valueQuantity"));
    EXPECT_FALSE(all[0].contains("dataAbsentReason"));
    EXPECT_FALSE(all[1].contains("valueQuantity"));
    EXPECT_EQ(all[1]["dataAbsentReason"]["coding"][0]["code"], "unknown");
  }
}

TEST(FhirBundle, HasTheCasesLabelAndNoPatient) {
  const std::string text = bundle_of(two_visits()).dump();
  const json bundle = json::parse(text);
  EXPECT_EQ(bundle["identifier"]["value"], "leg 7");
  EXPECT_TRUE(bundle["identifier"]["system"].get<std::string>().starts_with("urn:uuid:"));
  EXPECT_EQ(text.find("\"subject\""), std::string::npos);
  EXPECT_EQ(text.find("Patient"), std::string::npos);
}

TEST(FhirBundle, GivesTheSetPressureWithoutACode) {
  wound::Case value = two_visits();
  value.dressing.pressure_mmhg = -100;
  const auto uncoded = coded(bundle_of(value), "");
  ASSERT_EQ(uncoded.size(), 1u);
  EXPECT_EQ(value_of(uncoded[0]), -100);
  EXPECT_EQ(uncoded[0]["effectiveDateTime"], "2026-03-30");
  EXPECT_FALSE(uncoded[0]["code"]["text"].get<std::string>().empty());
}

/// Two assessments of one day, two wounds: nothing is taken for anything else, and every member of
/// a panel is there.
TEST(FhirBundle, TellsItsObservationsApart) {
  wound::Case value = two_visits();
  value.assessments[1].date = value.assessments[0].date;
  wound::Wound second = value.current().wounds[0];
  second.id = "B, size";
  second.outline_cm = geometry::moved(second.outline_cm, {20, 0});
  value.current().wounds.push_back(second);
  const json bundle = bundle_of(value);
  std::set<std::string> urls, names;
  for (const json& entry : bundle["entry"]) {
    const std::string url = entry["fullUrl"];
    EXPECT_THAT(url, testing::MatchesRegex("urn:uuid:[0-9a-f]+-[0-9a-f]+-5[0-9a-f]+-[0-9a-f-]+"));
    EXPECT_EQ(url.size(), 45u);
    urls.insert(url);
    names.insert(entry["resource"]["identifier"][0]["value"]);
  }
  EXPECT_EQ(urls.size(), bundle["entry"].size());
  EXPECT_EQ(names.size(), bundle["entry"].size());
  const auto panels = coded(bundle, "72287-6");
  ASSERT_EQ(panels.size(), 3u);
  for (const json& panel : panels) {
    EXPECT_EQ(panel["hasMember"].size(), 5u);
    for (const json& member : panel["hasMember"]) EXPECT_TRUE(urls.contains(member["reference"]));
  }
}

TEST(FhirBundle, IsTheSameForTheSameCaseAndNoOther) {
  const wound::Case value = two_visits();
  const auto measures = measures_over_time(value, dressing::plan_dressing(value));
  EXPECT_EQ(fhir_bundle(value, measures), fhir_bundle(value, measures));
  wound::Case other = value;
  other.assessments.pop_back();
  EXPECT_THROW(fhir_bundle(other, measures), std::logic_error);
}

TEST(MeasuresOverTime, AreThoseOfEachAssessmentPlannedByItself) {
  const wound::Case value = two_visits();
  const auto measures = measures_over_time(value, dressing::plan_dressing(value));
  ASSERT_EQ(measures.size(), 2u);
  for (std::size_t i = 0; i < 2; ++i) {
    wound::Case alone = value;
    alone.assessments = {value.assessments[i]};
    const auto plan = dressing::plan_dressing(alone);
    EXPECT_EQ(measures[i].at(0).area, plan.wounds[0].area);
    EXPECT_EQ(measures[i].at(0).volume, plan.wounds[0].volume);
  }
  std::stop_source stop;
  stop.request_stop();
  EXPECT_THROW(
      measures_over_time(value, dressing::plan_dressing(value), Progress(stop.get_token())),
      Cancelled);
}

}  // namespace
}  // namespace drapewright::casefile
