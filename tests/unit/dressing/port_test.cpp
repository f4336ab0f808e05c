#include <gtest/gtest.h>

#include "core/geometry/distance.h"
#include "tests/unit/dressing/cases.h"

namespace drapewright::dressing {
namespace {

TEST(Port, SitsInTheMiddleOfARoundFiller) {
  const Plan plan = plan_dressing(case_of(geometry::circle(6, {2, 3})));
  const Port& port = plan.drapes[0].port;
  ASSERT_TRUE(port.centre_cm.has_value());
  EXPECT_NEAR(port.centre_cm->x, 2, 0.02);
  EXPECT_NEAR(port.centre_cm->y, 3, 0.02);
  EXPECT_NEAR(port.largest_aperture.value, 5.4, 0.02);
  EXPECT_LE(port.largest_aperture.value, 5.4);
  EXPECT_TRUE(port.fits);
  EXPECT_EQ(port.aperture_limit_cm, 2);
}

TEST(Port, OfATinyWoundNeedsABridge) {
  const Plan plan = plan_dressing(case_of(geometry::circle(2)));
  EXPECT_FALSE(plan.drapes[0].port.fits);
  EXPECT_NEAR(plan.drapes[0].port.largest_aperture.value, 1.4, 0.01);
  EXPECT_NE(finding(plan, "bridge-needed"), nullptr);
}

TEST(Port, KeepsOutOfNoPortZones) {
  wound::Case value = case_of(geometry::rectangle(10, 6));
  const geometry::Ring zone = geometry::rectangle(6, 8, {2.5, 0});
  value.current().skin_zones.push_back({.kind = wound::ZoneKind::no_port, .outline_cm = zone});
  const Plan plan = plan_dressing(value);
  const Port& port = plan.drapes[0].port;
  ASSERT_TRUE(port.centre_cm.has_value());
  EXPECT_FALSE(geometry::contains(geometry::Polygon{zone, {}}, *port.centre_cm));
  // Filler from -4.7 to the zone's edge at -0.5.
  EXPECT_NEAR(port.largest_aperture.value, 4.2, 0.02);
}

TEST(Port, HasNoPlaceWhereAllFillerIsForbidden) {
  wound::Case value = case_of(geometry::circle(5));
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_port, .outline_cm = geometry::circle(8)});
  const Plan plan = plan_dressing(value);
  EXPECT_FALSE(plan.drapes[0].port.centre_cm.has_value());
  EXPECT_FALSE(plan.drapes[0].port.fits);
  EXPECT_EQ(finding(plan, "no-place-for-port")->severity, Severity::stop);
}

TEST(Port, BaseThatReachesIntoAZoneIsReported) {
  wound::Case value = case_of(geometry::circle(6));
  value.current().skin_zones.push_back(
      {.kind = wound::ZoneKind::no_port, .outline_cm = geometry::rectangle(4, 10, {4, 0})});
  EXPECT_NE(finding(plan_dressing(value), "base-on-no-port-zone"), nullptr);
}

TEST(Port, ServesOnlyFillerThatIsJoined) {
  wound::Case value = case_of(geometry::circle(5));
  add_wound(value, "B", geometry::circle(4, {8, 0}));
  const Plan plan = plan_dressing(value);
  ASSERT_EQ(plan.drapes.size(), 1u);
  EXPECT_NE(finding(plan, "filler-not-joined"), nullptr);
  EXPECT_NEAR(plan.drapes[0].port.centre_cm->x, 0, 0.02) << "on the larger one";
}

TEST(Aperture, OverItsLimitIsAWarning) {
  wound::Case value = case_of(geometry::circle(8));
  value.dressing.aperture_diameter_cm = 2.5;
  const Plan plan = plan_dressing(value);
  ASSERT_NE(finding(plan, "aperture-diameter-above-practice"), nullptr);
  EXPECT_TRUE(plan.drapes[0].port.fits);
}

}  // namespace
}  // namespace drapewright::dressing
