#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

#include "core/base/error.h"
#include "core/picture/picture.h"

namespace drapewright::picture {
namespace {

using testing::HasSubstr;

std::string fault_of(const Reference& reference) {
  try {
    check(reference);
  } catch (const InputError& fault) {
    return fault.what();
  }
  return "";
}

std::string fault_of(const Picture& value) {
  try {
    check(value, "/p");
  } catch (const InputError& fault) {
    return fault.what();
  }
  return "";
}

KnownSquare square(Pixel a, Pixel b, Pixel c, Pixel d) {
  return {.corners = {a, b, c, d}, .side_cm = 5};
}

TEST(Reference, IsRefusedWithWordsWhenItGivesNoScale) {
  EXPECT_EQ(fault_of(square({0, 0}, {100, 0}, {100, 100}, {0, 100})), "");
  EXPECT_THAT(fault_of(square({0, 0}, {100, 0}, {50, 3}, {50, 100})),
              HasSubstr("nearly on a line"));
  EXPECT_THAT(fault_of(square({0, 0}, {100, 0}, {50, 40}, {50, 100})),
              HasSubstr("inside the triangle"));
  EXPECT_THAT(fault_of(square({0, 0}, {0, 0}, {100, 100}, {0, 100})), HasSubstr("0 pixels apart"));
  EXPECT_THAT(fault_of(square({0, 0}, {100, 0}, {200, 0}, {300, 0})),
              HasSubstr("nearly on a line"));
  EXPECT_THAT(fault_of(square({0, 0}, {100, 0}, {100, 100}, {0, std::nan("")})),
              HasSubstr("not finite"));
  EXPECT_THAT(fault_of(KnownLength{.from = {0, 0}, .to = {0, 19}, .length_cm = 1}),
              HasSubstr("19 pixels apart"));
  EXPECT_THAT(fault_of(KnownLength{.from = {0, 0}, .to = {0, 90}, .length_cm = 0}),
              HasSubstr("above 0 to 100 cm"));
}

TEST(Picture, NamesABareFileBesideTheCase) {
  Picture value{.file = "leg-1.jpg", .width_px = 4, .height_px = 3};
  EXPECT_EQ(fault_of(value), "");
  for (const char* bad : {"", "../leg.jpg", "/etc/leg.jpg", "a/b.png", "a\\b.png", ".png",
                          "leg.gif", "c:leg.png", "leg\n.png"}) {
    value.file = bad;
    EXPECT_THAT(fault_of(value), HasSubstr("/p/file")) << bad;
  }
}

TEST(Picture, IsCheckedMemberByMember) {
  Picture value{.file = "leg.png", .width_px = 0, .height_px = 3};
  EXPECT_THAT(fault_of(value), HasSubstr("0 x 3 pixels"));
  value.width_px = 4;
  value.click_error_px = 21;
  EXPECT_THAT(fault_of(value), HasSubstr("/p/click_error_px"));
  value.click_error_px = 1;
  value.checks = {{.from = {0, 0}, .to = {50, 0}, .length_cm = 101}};
  EXPECT_THAT(fault_of(value), HasSubstr("/p/check_lengths/0/length_cm"));
  value.checks.clear();
  value.limb = LimbView{.axis_from = {0, 0}, .axis_to = {0, 90}, .girth_cm = 301};
  EXPECT_THAT(fault_of(value), HasSubstr("/p/limb/girth_cm"));
  value.limb->girth_cm = 30;
  value.limb->camera_distance_cm = 1;
  EXPECT_THAT(fault_of(value), HasSubstr("/p/limb/camera_distance_cm"));
}

}  // namespace
}  // namespace drapewright::picture
