// What is said while a port is being moved must be what the plan says once it lies there.
#include "core/dressing/port_ground.h"

#include <gtest/gtest.h>

#include <cmath>

#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

wound::Case with_zones() {
  wound::Case value = case_of(geometry::ellipse(9, 6));
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_port, .outline_cm = geometry::circle(2, {2, 1})});
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_film, .outline_cm = geometry::rectangle(2, 20, {-8, 0})});
  return value;
}

wound::Case with_pocket() {
  wound::Case value = case_of(geometry::ellipse(6, 5));
  value.current().wounds[0].undermining.push_back({2, 5, 2, {}});
  return value;
}

wound::Case of_two_pieces() {
  wound::Case value = case_of(geometry::circle(4));
  add_wound(value, "B", geometry::circle(3, {6, 1}));
  return value;
}

/// Compared with a plan of its own for each of many places in and round the wounds.
void expect_as_planned(wound::Case value) {
  value.dressing.port_places_cm.clear();
  const Plan before = plan_dressing(value);
  ASSERT_FALSE(before.drapes[0].port.on_bridge);
  const PortGround ground(value, before, 0);
  for (int i = 0; i < 12; ++i) {
    const geometry::Point place{-7 + 1.27 * i, 3.1 * std::sin(1.7 * i)};
    const PortPlace here = ground.at(place);
    value.dressing.port_places_cm = {place};
    const Plan plan = plan_dressing(value);
    const Port& port = plan.drapes[0].port;
    ASSERT_EQ(here.in_reach, port.chosen) << place.x << " " << place.y;
    if (!here.in_reach) continue;
    EXPECT_NEAR(here.room_cm, port.room.value, 1e-9) << place.x << " " << place.y;
    EXPECT_EQ(here.aperture_fits, port.fits);
    EXPECT_EQ(here.base_clear, finding(plan, "base-on-zone") == nullptr);
    EXPECT_EQ(here.base_on_film, finding(plan, "base-off-film") == nullptr);
  }
}

TEST(PortGround, SaysWhatThePlanWillSay) {
  expect_as_planned(case_of(geometry::ellipse(9, 6)));
  expect_as_planned(with_zones());
  expect_as_planned(with_pocket());
  expect_as_planned(of_two_pieces());
}

TEST(PortGround, OfAPortOnABridgeIsOnTheSafeSide) {
  wound::Case value = case_of(geometry::circle(2));
  const Plan before = plan_dressing(value);
  ASSERT_TRUE(before.drapes[0].port.on_bridge);
  const PortGround ground(value, before, 0);
  for (double x = 0; x <= 6; x += 0.1) {
    value.dressing.port_places_cm = {{x, 0}};
    if (!ground.at({x, 0}).base_on_film) continue;
    EXPECT_EQ(finding(plan_dressing(value), "base-off-film"), nullptr) << x;
  }
  EXPECT_TRUE(ground.at({0, 0}).base_on_film);
}

TEST(PortGround, KeepsThePlacesOfOtherFilms) {
  wound::Case value = case_of(geometry::circle(6));
  add_wound(value, "B", geometry::circle(6, {30, 0}));
  value.dressing.port_places_cm = {{31, 0}, {0.5, 0.5}, {1, 0}};
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.drapes.size(), 2u);
  const PortGround ground(value, plan, 0);
  const auto moved = ground.places_with(value.dressing.port_places_cm, {-1, 0});
  EXPECT_EQ(moved, (std::vector<geometry::Point>{{31, 0}, {-1, 0}}));
  EXPECT_EQ(ground.places_without(moved), (std::vector<geometry::Point>{{31, 0}}));
  EXPECT_FALSE(ground.at({31, 0}).in_reach) << "that place is the other film's";
}

}  // namespace
}  // namespace drapewright::dressing
