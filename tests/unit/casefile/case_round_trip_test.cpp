#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>

#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "core/casefile/settings.h"
#include "core/geometry/shapes.h"
#include "tests/support/example_case.h"

namespace drapewright::casefile {
namespace {

using support::example_case;

picture::Picture full_picture() {
  picture::KnownSquare square{.corners = {{{1.0 / 3, 0}, {400, 10}, {420, 430}, {-5.5, 400}}},
                              .side_cm = 5};
  square.extra["x_q"] = "1";
  picture::LimbView limb{
      .axis_from = {10, 20}, .axis_to = {30, 400}, .girth_cm = 31, .camera_distance_cm = 45.5};
  limb.extra["x_b"] = "2";
  picture::Picture out{.file = "leg-3fa9.jpg", .width_px = 4000, .height_px = 3000};
  out.reference = square;
  out.checks = {{.from = {1, 2}, .to = {101, 2}, .length_cm = 2}};
  out.click_error_px = 1.5;
  out.limb = limb;
  out.extra["x_i"] = "[]";
  return out;
}

/// A case in which every member of the format is set to something that is not its default.
wound::Case full_case() {
  wound::Case value{.label = "Demo \"7\" \\ caf\xC3\xA9\n", .body_site = "left heel"};
  value.limb_girth_cm = 34.5;
  value.head_direction_deg = 33.25;
  wound::Wound wound{.id = "A",
                     .outline_cm = geometry::rectangle(8, 5, {1.0 / 3, -2.0 / 7}, 12),
                     .islands_cm = {geometry::rectangle(1, 1, {1.0 / 3, -2.0 / 7})},
                     .trace_cm = {{0.1, 0.2}, {1.0 / 3, 2}, {2, 1}},
                     .depth_cm = 2.1,
                     .wall_run_in_cm = 0.4,
                     .undermining = {{.from_clock = 11, .to_clock = 1, .extent_cm = 1.5}},
                     .tunnels = {{.clock = 3, .length_cm = 4, .explored = true}}};
  wound.extra["x_nurse"] = "{\"a\": [1, 2.50, null]}";
  wound.undermining[0].extra["x_u"] = "1";
  wound.tunnels[0].extra["x_t"] = "2";
  wound::SkinZone zone{.kind = wound::ZoneKind::no_port,
                       .outline_cm = geometry::rectangle(2, 1, {12, 0}),
                       .note = "bone"};
  zone.extra["x_z"] = "\"z\"";
  wound::Assessment first{.date = "2026-02-23", .wounds = {wound}};
  wound::Assessment second{
      .date = "2026-03-02", .wounds = {wound}, .skin_zones = {zone}, .exudate_ml_per_day = 12.5};
  second.extra["x_a"] = "true";
  second.picture = full_picture();
  first.picture = {.file = "leg-0.png", .width_px = 4, .height_px = 3};
  first.picture->reference = picture::KnownLength{
      .from = {0, 0}, .to = {30, 40}, .length_cm = 10, .extra = {{"x_l", "3"}}};
  value.assessments = {first, second};
  double step = 0;
  for (const auto& [name, setting] : settings) value.dressing.*setting += (step += 0.001);
  value.dressing.bridge_wanted = true;
  value.dressing.port_places_cm = {{1.0 / 3, -2.0 / 7}, {1.0 / 3, -2.0 / 7}};
  value.dressing.extra["x_d"] = "[]";
  supplies::StockItem item{.item = "Filler 10 x 8",
                           .kind = supplies::Kind::filler_sheet,
                           .length_cm = 10,
                           .width_cm = 8,
                           .thickness_cm = 1.5,
                           .unit_cost = 0.1,
                           .available = 3};
  item.extra["x_s"] = "1e2";
  value.supplies = {item,
                    {.item = "Canister", .kind = supplies::Kind::canister, .capacity_ml = 500}};
  wound::Application application{
      .date = "2026-03-03", .pieces_placed = 2, .pieces_removed = 1, .note = "one left"};
  application.extra["x_p"] = "{}";
  value.applications = {application};
  value.cautions = {.reviewed = true, .present = {"bleeding-risk", "from-a-newer-program"}};
  value.cautions.extra["x_c"] = "0";
  value.extra["x_ward"] = "\"West\"";
  return value;
}

TEST(CaseRoundTrip, KeepsEveryMember) {
  const wound::Case value = full_case();
  const std::string text = case_to_json(value);
  EXPECT_EQ(case_from_json(text), value);
  EXPECT_EQ(case_to_json(case_from_json(text)), text);
}

TEST(CaseRoundTrip, KeepsUnknownMembersAsTheyStand) {
  const std::string unknown = "{ \"when\": \"noon\",\n  \"figures\": [1.50, 1e300, -0.0] }";
  const std::string text =
      example_case(R"("outline_cm": [[0, 0], [8, 0], [8, 5]], "x_photo": )" + unknown);
  const wound::Case value = case_from_json(text);
  EXPECT_EQ(value.assessments[0].wounds[0].extra.at("x_photo"), unknown);
  EXPECT_NE(case_to_json(value).find(unknown), std::string::npos);
}

TEST(CaseRoundTrip, FillsInTheDefaultsOfTheFormat) {
  const wound::Case value = case_from_json(example_case());
  EXPECT_EQ(value.dressing, wound::DressingSettings{});
  EXPECT_EQ(value.head_direction_deg, 90);
  EXPECT_FALSE(value.limb_girth_cm.has_value());
  EXPECT_FALSE(value.supplies.has_value());
  EXPECT_FALSE(value.cautions.reviewed);
  EXPECT_NE(case_to_json(value).find("\"border_cm\": 5"), std::string::npos);
}

TEST(CaseRoundTrip, TakesAnEmptyStockListForOne) {
  const wound::Case value = case_from_json(
      example_case(R"("outline_cm": [[0, 0], [8, 0], [8, 5]])", R"(, "supplies": [])"));
  ASSERT_TRUE(value.supplies.has_value());
  EXPECT_TRUE(value.supplies->empty());
  EXPECT_EQ(case_from_json(case_to_json(value)), value);
}

TEST(CaseRoundTrip, LeavesOutTheClosingPoint) {
  const wound::Case closed =
      case_from_json(example_case(R"("outline_cm": [[0, 0], [8, 0], [8, 5], [0, 5], [0, 0]])"));
  EXPECT_EQ(closed, case_from_json(example_case()));
}

TEST(CaseRoundTrip, KeepsEveryBitOfANumber) {
  std::mt19937_64 random(7);
  std::uniform_real_distribution<double> radius(1, 5);
  for (int round = 0; round < 50; ++round) {
    wound::Case value = case_from_json(example_case());
    auto& ring = value.current().wounds[0].outline_cm;
    ring.clear();
    for (int i = 0; i < 40; ++i) {
      const double r = radius(random);
      ring.push_back(
          {r * std::cos(geometry::radians(9 * i)), r * std::sin(geometry::radians(9 * i))});
    }
    EXPECT_EQ(case_from_json(case_to_json(value)), value);
  }
}

TEST(CaseRoundTrip, WritesSeveralPointsToALineOfAtMostAHundredCharacters) {
  wound::Case value = case_from_json(example_case());
  value.current().wounds[0].outline_cm = geometry::circle(6);
  const std::string text = case_to_json(value);
  std::size_t lines = 0;
  for (std::size_t begin = 0; begin < text.size(); ++lines) {
    const auto end = text.find('\n', begin);
    EXPECT_LE(end - begin, 100u);
    begin = end + 1;
  }
  EXPECT_LT(lines, 300u);  // of 360 points
}

}  // namespace
}  // namespace drapewright::casefile
