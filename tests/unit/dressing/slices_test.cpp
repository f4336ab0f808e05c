#include "core/dressing/slices.h"

#include <gtest/gtest.h>

namespace drapewright::dressing {
namespace {

supplies::StockList sheets(std::initializer_list<double> thicknesses) {
  supplies::StockList list;
  for (const double t : thicknesses) {
    list.push_back({.item = "sheet",
                    .kind = supplies::Kind::filler_sheet,
                    .length_cm = 10,
                    .width_cm = 8,
                    .thickness_cm = t});
  }
  return list;
}

TEST(Slices, FillTheDepthExactly) {
  for (const double depth : {0.5, 1.5, 2.0, 3.0, 4.0, 4.5, 7.3}) {
    const Slicing slicing = slice_depth(depth, 3, 0.5, sheets({1.5, 3}));
    double bottom = 0;
    for (const Slice& slice : slicing.slices) {
      EXPECT_NEAR(slice.top_cm, bottom, 1e-12);
      EXPECT_LE(slice.thickness_cm, slice.sheet_thickness_cm + 1e-12);
      bottom = slice.bottom_cm();
    }
    EXPECT_NEAR(bottom + slicing.left_out_cm, depth, 1e-12) << depth;
  }
}

TEST(Slices, AreAsFewAsTheThickestSheetAllows) {
  EXPECT_EQ(slice_depth(6, 3, 0.5, sheets({1.5, 3})).slices.size(), 2u);
  EXPECT_EQ(slice_depth(6, 1.5, 0.5, sheets({1.5, 3})).slices.size(), 4u) << "no thicker than set";
}

TEST(Slices, LeaveOutWhatCannotBeCutThin) {
  const Slicing slicing = slice_depth(3.2, 3, 0.5, sheets({1.5, 3}));
  EXPECT_EQ(slicing.slices.size(), 1u);
  EXPECT_NEAR(slicing.left_out_cm, 0.2, 1e-12);
  EXPECT_EQ(slice_depth(0.2, 3, 0.5, sheets({1.5, 3})).slices.size(), 1u) << "never the only one";
}

TEST(Slices, SayWhenNoSheetIsThatThin) {
  const Slicing slicing = slice_depth(2, 1, 0.5, sheets({1.5, 3}));
  EXPECT_FALSE(slicing.thickness_in_stock);
  EXPECT_EQ(slicing.slices.size(), 2u) << "planned with the setting all the same";
}

}  // namespace
}  // namespace drapewright::dressing
