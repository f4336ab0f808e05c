#include "core/report/layer_style.h"

#include <gtest/gtest.h>

#include <set>

#include "tests/unit/report/colour_vision.h"

namespace drapewright::report {
namespace {

constexpr Ground grounds[] = {Ground::light, Ground::dark};

/// Layers that lie around or under the plan, or are read by their form (arrows, letters), not by
/// line and hatch. Grids are decoration: the rulers say the same in ink.
bool is_mark(LayerKind kind) {
  return kind == LayerKind::fine_grid || kind == LayerKind::grid || kind == LayerKind::measures ||
         kind == LayerKind::clock || kind == LayerKind::finding_place || kind == LayerKind::panel;
}

enum class Weight { thin, medium, thick, band };
Weight weight_of(double line_mm) {
  return line_mm < 0.3   ? Weight::thin
         : line_mm < 0.5 ? Weight::medium
         : line_mm < 1.2 ? Weight::thick
                         : Weight::band;
}

TEST(LayerStyle, EveryLayerHasOneStyleInTheOrderOfDrawing) {
  int expected = 0;
  std::set<std::string_view> ids;
  for (const LayerStyle& style : layer_styles()) {
    EXPECT_EQ(static_cast<int>(style.kind), expected++);
    EXPECT_EQ(style_of(style.kind).id, style.id);
    EXPECT_TRUE(ids.insert(style.id).second) << style.id;
    EXPECT_FALSE(style.title.empty());
  }
  EXPECT_EQ(expected, static_cast<int>(LayerKind::panel) + 1);
}

// WCAG 2.2: the formula's own known values (black on white 21; #767676 4.54; #777777 4.48).
TEST(Colour, ContrastFollowsTheFormulaOfWcag) {
  const Colour white{255, 255, 255};
  EXPECT_NEAR(contrast_ratio({0, 0, 0}, white), 21, 1e-9);
  EXPECT_NEAR(contrast_ratio(white, {0x76, 0x76, 0x76}), 4.542, 0.001);
  EXPECT_NEAR(contrast_ratio({0x77, 0x77, 0x77}, white), 4.478, 0.001);
  EXPECT_EQ(over({0, 0, 0, 128}, white), (Colour{127, 127, 127}));
  EXPECT_EQ(hex({0, 114, 178}), "#0072b2");
}

// WCAG 2.2, 1.4.11: marks 3:1 against what they lie on. A layer's line borders on the ground
// outside and on its own fill inside.
TEST(LayerStyle, LinesContrastWithTheGroundAndWithTheirFill) {
  for (const Ground ground : grounds) {
    for (const LayerStyle& style : layer_styles()) {
      if (style.kind == LayerKind::grid || style.kind == LayerKind::fine_grid) continue;
      const Colour line = style.line_colour(ground);
      EXPECT_EQ(line.alpha, 255);
      EXPECT_GE(contrast_ratio(line, ground_colour(ground)), 3) << style.id;
      const Colour fill = over(style.fill_colour(ground), ground_colour(ground));
      EXPECT_GE(contrast_ratio(line, fill), 3) << style.id << " on its fill";
    }
  }
}

// WCAG 2.2, 1.4.3: text 4.5:1, also on a plate that lets the darkest fill shine through.
TEST(LayerStyle, TextContrastsWithTheGroundAndWithEveryFill) {
  for (const Ground ground : grounds) {
    EXPECT_GE(contrast_ratio(ink_colour(ground), ground_colour(ground)), 4.5);
    for (const LayerStyle& style : layer_styles()) {
      const Colour fill = over(style.fill_colour(ground), ground_colour(ground));
      EXPECT_GE(contrast_ratio(ink_colour(ground), fill), 4.5) << style.id;
    }
  }
}

TEST(LayerStyle, NoTwoLayersAreToldApartByColourAlone) {
  std::set<std::tuple<Line, Hatch, Weight>> looks;
  for (const LayerStyle& style : layer_styles()) {
    if (is_mark(style.kind)) continue;
    EXPECT_TRUE(looks.insert({style.line, style.hatch, weight_of(style.line_mm)}).second)
        << style.id << " looks like another layer without its colour";
  }
}

TEST(LayerStyle, NeighbouringLinesDifferForTheColourBlind) {
  for (const Matrix& matrix : {protanopia, deuteranopia, tritanopia}) {
    for (const auto& row : matrix) EXPECT_NEAR(row[0] + row[1] + row[2], 1, 2e-3);
  }
  const std::pair<LayerKind, LayerKind> neighbours[] = {
      {LayerKind::wound, LayerKind::filler},      {LayerKind::wound, LayerKind::film},
      {LayerKind::wound, LayerKind::island},      {LayerKind::filler, LayerKind::port_base},
      {LayerKind::filler, LayerKind::aperture},   {LayerKind::film, LayerKind::no_film_zone},
      {LayerKind::film, LayerKind::film_sheet},   {LayerKind::wound, LayerKind::aperture},
      {LayerKind::film, LayerKind::no_port_zone}, {LayerKind::wound, LayerKind::port_base},
      {LayerKind::bridge, LayerKind::wound},      {LayerKind::bridge, LayerKind::skin_protection},
      {LayerKind::bridge, LayerKind::film},       {LayerKind::bridge, LayerKind::port_base},
      {LayerKind::bridge, LayerKind::aperture},   {LayerKind::seam, LayerKind::film_sheet}};
  for (const Ground ground : grounds) {
    for (const Matrix& matrix : {protanopia, deuteranopia, tritanopia}) {
      for (const auto& [a, b] : neighbours) {
        const auto seen = [&](LayerKind kind) {
          return lab(seen_with(matrix, linear_rgb(style_of(kind).line_colour(ground))));
        };
        // CIE76: 2.3 is a just noticeable difference; thin lines need several times that.
        EXPECT_GE(difference(seen(a), seen(b)), 10) << style_of(a).id << ", " << style_of(b).id;
      }
    }
  }
}

}  // namespace
}  // namespace drapewright::report
