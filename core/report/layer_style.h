#pragma once

#include <cstdint>
#include <span>
#include <string_view>

namespace drapewright::report {

/// The layers of a plan's drawing, bottom first. Screen, picture and paper use the same ones.
enum class LayerKind {
  grid,
  film_sheet,
  film_required,
  film,
  no_film_zone,
  no_port_zone,
  wound,
  undermining,
  filler,
  unfilled,
  island,
  port_base,
  aperture,
  measures,
  clock,
  finding_place,
};

enum class Hatch { none, rising, falling, crossed, dotted, horizontal };
enum class Line { solid, dashed, dotted, dash_dot, none };

struct Colour {
  std::uint8_t red = 0, green = 0, blue = 0;
  std::uint8_t alpha = 255;
};

/// How a layer looks. No two layers are told apart by colour alone: line and hatch differ, too.
/// Hues are those of Okabe and Ito's palette for the colour-blind (Color Universal Design, 2008),
/// darkened where WCAG 2.2 asks 3:1 against the ground.
struct LayerStyle {
  LayerKind kind;
  std::string_view id;     ///< "filler": class name in SVG, key of the switch in settings
  std::string_view title;  ///< what the legend calls it
  Colour line_on_light, fill_on_light;
  Colour line_on_dark, fill_on_dark;
  double line_mm = 0.35;
  Line line = Line::solid;
  Hatch hatch = Hatch::none;
};

std::span<const LayerStyle> layer_styles();  ///< bottom first
const LayerStyle& style_of(LayerKind kind);

}  // namespace drapewright::report
