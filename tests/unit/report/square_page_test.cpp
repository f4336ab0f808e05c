#include "core/report/square_page.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <vector>

#include "core/geometry/measures.h"

namespace drapewright::report {
namespace {

/// Width and height of every closed line of the squares' layer, largest first.
std::vector<geometry::Box> squares_on(const Drawing& page) {
  std::vector<geometry::Box> out;
  for (const DrawnLayer& layer : page.layers) {
    for (const Stroke& stroke : layer.strokes) {
      if (stroke.layer != LayerKind::check_bar || stroke.points.size() != 5) continue;
      out.push_back(geometry::bounding_box(stroke.points));
    }
  }
  std::ranges::sort(out, std::ranges::greater{}, [](const auto& box) { return box.width(); });
  return out;
}

TEST(SquarePage, HasSquaresOfTenFiveAndTwoCmThatLieApartOnBothPapers) {
  for (const Paper paper : {Paper::a4, Paper::letter}) {
    const Document document = square_page({.paper = paper, .today = "2026-03-02"});
    ASSERT_EQ(document.pages.size(), 1);
    const auto squares = squares_on(document.pages[0]);
    ASSERT_EQ(squares.size(), 3);
    for (std::size_t i = 0; i < 3; ++i) {
      EXPECT_NEAR(squares[i].width(), square_sides_mm[i], 1e-9);
      EXPECT_NEAR(squares[i].height(), square_sides_mm[i], 1e-9);
      EXPECT_GE(squares[i].low.x, page_margin_mm);
      EXPECT_LE(squares[i].high.x, size_of(paper).width_mm - page_margin_mm);
      EXPECT_LE(squares[i].high.y, size_of(paper).height_mm - page_margin_mm);
      for (std::size_t j = 0; j < i; ++j) {
        const bool apart =
            squares[i].low.x > squares[j].high.x + 5 || squares[i].low.y > squares[j].high.y + 5;
        EXPECT_TRUE(apart);
      }
    }
  }
}

TEST(SquarePage, IsStretchedForAPrinterThatShrinks) {
  const auto squares = squares_on(square_page({}, {99, 101}).pages[0]);
  ASSERT_EQ(squares.size(), 3);
  EXPECT_NEAR(squares[0].width() * 0.99, 100, 1e-9);
  EXPECT_NEAR(squares[0].height() * 1.01, 100, 1e-9);
  EXPECT_THROW(square_page({}, {80, 100}), std::invalid_argument);
}

}  // namespace
}  // namespace drapewright::report
