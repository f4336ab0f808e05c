// What becomes of undermining and tunnels when an outline is drawn over.
#include "app/desktop/document/reshape_case.h"

#include <gtest/gtest.h>

#include "app/desktop/document/case_document.h"
#include "app/desktop/document/clock_hours.h"
#include "core/geometry/measures.h"
#include "core/geometry/shapes.h"

namespace drapewright::desktop_test {
namespace {

using desktop::ShapeRef;
using geometry::Ring;

Ring square(double x, double y, double side) {
  return {{x, y}, {x + side, y}, {x + side, y + side}, {x, y + side}};
}

/// Two squares of 4 cm, a centimetre apart.
wound::Case two_wounds() {
  wound::Case value = desktop::empty_case("2031-03-01");
  desktop::add_wound(value, square(0, 0, 4));
  desktop::add_wound(value, square(5, 0, 4));
  return value;
}

const ShapeRef first{ShapeRef::Kind::wound, 0, 0};

TEST(Reshape, JoinsWoundsWithoutPockets) {
  auto value = two_wounds();
  EXPECT_FALSE(desktop::add_area(value, first, square(3, 1, 3)));
  EXPECT_EQ(value.current().wounds.size(), 1u);
}

TEST(Reshape, DoesNotSwallowPockets) {
  auto value = two_wounds();
  value.current().wounds[1].tunnels = {{.clock = 3, .length_cm = 2}};
  const auto before = value;
  const auto refusal = desktop::add_area(value, first, square(3, 1, 3));
  ASSERT_TRUE(refusal);
  EXPECT_TRUE(refusal->contains(QString::fromStdString(value.current().wounds[1].id)));
  EXPECT_EQ(value, before);
}

TEST(Reshape, TellsWhenAMiddleMovesUnderItsHours) {
  auto value = two_wounds();
  value.current().wounds[0].undermining = {{.from_clock = 2, .to_clock = 4, .extent_cm = 1}};
  auto after = value;
  ASSERT_FALSE(desktop::add_area(after, first, square(-3, 0, 3.5)));
  EXPECT_TRUE(desktop::hours_in_doubt(value, after).contains("check the hours"));
  after = value;
  after.current().wounds[0].undermining.clear();
  ASSERT_FALSE(desktop::add_area(after, first, square(-3, 0, 3.5)));
  EXPECT_TRUE(desktop::hours_in_doubt(value, after).isEmpty()) << "nothing is counted any more";
}

TEST(Reshape, TellsTurnsAndNoShifts) {
  auto value = two_wounds();
  auto& wound = value.current().wounds[0];
  wound.undermining = {{.from_clock = 2, .to_clock = 4, .extent_cm = 1}};
  const auto middle = geometry::centroid(wound.outline_cm);
  auto shifted = value, turned = value, nudged = value;
  desktop::place_anew(shifted, first, middle, {.by_cm = {3, 1}});
  desktop::place_anew(turned, first, middle, {.turn_deg = 30});
  desktop::place_anew(nudged, first, middle, {.turn_deg = 1});
  EXPECT_TRUE(desktop::hours_in_doubt(value, shifted).isEmpty());
  EXPECT_TRUE(desktop::hours_in_doubt(value, turned).contains("turned"));
  EXPECT_TRUE(desktop::hours_in_doubt(value, nudged).isEmpty());
}

}  // namespace
}  // namespace drapewright::desktop_test
