#include "core/report/layer_style.h"

#include <array>
#include <stdexcept>

#include "core/base/say.h"

namespace drapewright::report {

namespace {

constexpr Colour clear{0, 0, 0, 0};
constexpr Colour ink_light{32, 32, 32};
constexpr Colour ink_dark{236, 236, 236};

constexpr Colour faint(Colour colour, std::uint8_t alpha) {
  return {colour.red, colour.green, colour.blue, alpha};
}

// Okabe and Ito's hues as they are used on either ground: unchanged where they reach 3:1, else
// darkened (orange, sky blue, yellow on white) or lightened.
constexpr Colour orange_light{168, 116, 0}, orange_dark{230, 159, 0};
constexpr Colour sky_light{42, 127, 181}, sky_dark{86, 180, 233};
constexpr Colour green_light{0, 128, 93}, green_dark{43, 199, 155};
constexpr Colour yellow_light{138, 127, 0}, yellow_dark{240, 228, 66};
constexpr Colour blue_light{0, 114, 178}, blue_dark{112, 170, 235};
constexpr Colour vermillion_light{194, 85, 0}, vermillion_dark{255, 138, 61};
constexpr Colour purple_light{168, 68, 123}, purple_dark{224, 143, 189};
constexpr Colour grey_light{95, 95, 95}, grey_dark{168, 168, 168};

constexpr std::array styles{
    LayerStyle{LayerKind::fine_grid,
               "fine-grid",
               term("Fine grid"),
               {222, 226, 230},
               clear,
               {48, 54, 60},
               clear,
               0.1},
    LayerStyle{
        LayerKind::grid, "grid", term("Grid"), {184, 190, 196}, clear, {80, 88, 96}, clear, 0.1},
    LayerStyle{LayerKind::skin, "skin", term("Skin"), grey_light, faint(grey_light, 20), grey_dark,
               faint(grey_dark, 24), 0.35, Line::solid, Hatch::dotted},
    LayerStyle{LayerKind::film_sheet, "film-sheet", term("Film sheet"), grey_light, clear,
               grey_dark, clear, 0.35, Line::dash_dot},
    LayerStyle{LayerKind::seam, "seam", term("Seam of sheets or filler"), blue_light, clear,
               blue_dark, clear, 0.6, Line::long_dashed},
    LayerStyle{LayerKind::film, "film", term("Film as cut"), sky_light, faint(sky_light, 34),
               sky_dark, faint(sky_dark, 34), 0.35, Line::solid},
    LayerStyle{LayerKind::film_required, "film-required", term("Border to cover"), blue_light,
               clear, blue_dark, clear, 0.35, Line::dashed},
    LayerStyle{LayerKind::no_film_zone, "no-film-zone", term("No film here"), ink_light,
               faint(grey_light, 30), ink_dark, faint(grey_dark, 36), 0.35, Line::solid,
               Hatch::crossed},
    LayerStyle{LayerKind::no_port_zone, "no-port-zone", term("No port here"), purple_light,
               faint(purple_light, 24), purple_dark, faint(purple_dark, 28), 0.35, Line::dashed,
               Hatch::dotted},
    LayerStyle{LayerKind::border_enough, "border-enough", term("Border enough"), sky_light, clear,
               sky_dark, clear, 1.6, Line::dotted},
    LayerStyle{LayerKind::border_short, "border-short", term("Border short, or may be"),
               orange_light, clear, orange_dark, clear, 1.6, Line::dashed},
    LayerStyle{LayerKind::border_none, "border-none", term("No border"), ink_light, clear, ink_dark,
               clear, 1.6, Line::solid},
    LayerStyle{LayerKind::wound, "wound", term("Wound edge"), vermillion_light,
               faint(vermillion_light, 40), vermillion_dark, faint(vermillion_dark, 48), 0.7},
    LayerStyle{LayerKind::undermining, "undermining", term("Undermined, tunnel"), orange_light,
               faint(orange_light, 24), orange_dark, faint(orange_dark, 28), 0.35, Line::dashed,
               Hatch::horizontal},
    LayerStyle{LayerKind::deeper_filler, "deeper-filler", term("Filler, deeper layer"), green_light,
               clear, green_dark, clear, 0.35, Line::dotted},
    LayerStyle{LayerKind::filler, "filler", term("Filler, top layer"), green_light,
               faint(green_light, 34), green_dark, faint(green_dark, 38), 0.35, Line::solid,
               Hatch::rising},
    LayerStyle{LayerKind::unfilled,
               "unfilled",
               term("Takes no filler"),
               yellow_light,
               {240, 228, 66, 130},
               yellow_dark,
               faint(yellow_dark, 70),
               0.35,
               Line::solid,
               Hatch::falling},
    LayerStyle{LayerKind::island,
               "island",
               term("Island of skin"),
               grey_light,
               {255, 255, 255, 235},
               grey_dark,
               {29, 33, 37, 235},
               0.35,
               Line::solid,
               Hatch::vertical},
    LayerStyle{LayerKind::skin_protection, "skin-protection", term("Film under a bridge"),
               sky_light, faint(sky_light, 34), sky_dark, faint(sky_dark, 34), 0.35,
               Line::short_dashed},
    // Filler's own green: it is filler. The heavier edge and upright hatch say it lies on skin.
    LayerStyle{LayerKind::bridge, "bridge", term("Bridge of filler"), green_light,
               faint(green_light, 20), green_dark, faint(green_dark, 24), 0.6, Line::solid,
               Hatch::vertical},
    LayerStyle{LayerKind::port_base, "port-base", term("Port base"), blue_light,
               faint(blue_light, 24), blue_dark, faint(blue_dark, 28), 0.35, Line::long_dashed},
    LayerStyle{LayerKind::aperture, "aperture", term("Aperture, cut out"), ink_light, clear,
               ink_dark, clear, 0.6, Line::short_dashed},
    LayerStyle{LayerKind::measures, "measures", term("Measure"), ink_light, clear, ink_dark, clear,
               0.2},
    LayerStyle{LayerKind::clock, "clock", term("Clock hours"), ink_light, clear, ink_dark, clear,
               0.25},
    LayerStyle{LayerKind::finding_place, "finding-place", term("Place of a finding"),
               vermillion_light, clear, vermillion_dark, clear, 0.9},
    LayerStyle{LayerKind::panel, "panel", term("Rulers and legend"), ink_light, clear, ink_dark,
               clear, 0.2},
};

// To be cut or drawn along: every line is as fine as a printer prints without a gap, and black.
constexpr double fine_mm = 0.2;
constexpr Colour black{0, 0, 0};
constexpr LayerStyle fine(LayerKind kind, std::string_view id, std::string_view title,
                          Line line = Line::solid) {
  return {kind, id, title, black, clear, ink_dark, clear, fine_mm, line};
}

constexpr std::array template_styles{
    fine(LayerKind::cut_line, "cut-line", term("Cut here")),
    fine(LayerKind::usual_border, "usual-border", term("Usual border"), Line::long_dashed),
    fine(LayerKind::least_border, "least-border", term("Least border"), Line::dash_dot),
    fine(LayerKind::guide, "guide", term("Place only, not cut"), Line::dotted),
    fine(LayerKind::check_bar, "check-bar", term("Check bar, 100 mm")),
    fine(LayerKind::registration, "registration", term("Mark where tiles join")),
    LayerStyle{LayerKind::tile_here,
               "tile-here",
               term("This page"),
               black,
               {0, 0, 0, 60},
               ink_dark,
               faint(ink_dark, 60),
               fine_mm},
};

// The pauses look as long as the dashes although round caps are not used.
constexpr std::array dashed{4.5, 3.0};
constexpr std::array short_dashed{1.9, 1.1};
constexpr std::array long_dashed{12.0, 3.5};
constexpr std::array dotted{1.2, 2.6};
constexpr std::array dash_dot{9.0, 3.0, 1.5, 3.0};

}  // namespace

std::span<const LayerStyle> layer_styles() { return styles; }
std::span<const LayerStyle> paper_styles() { return template_styles; }

const LayerStyle& style_of(LayerKind kind) {
  for (const auto table : {layer_styles(), paper_styles()}) {
    for (const LayerStyle& style : table) {
      if (style.kind == kind) return style;
    }
  }
  throw std::logic_error("a layer without a style");
}

std::span<const double> dashes_of(Line line) {
  switch (line) {
    case Line::dashed:
      return dashed;
    case Line::short_dashed:
      return short_dashed;
    case Line::long_dashed:
      return long_dashed;
    case Line::dotted:
      return dotted;
    case Line::dash_dot:
      return dash_dot;
    case Line::solid:
    case Line::none:
      return {};
  }
  return {};
}

}  // namespace drapewright::report
