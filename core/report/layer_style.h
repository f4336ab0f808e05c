#pragma once

#include <span>
#include <string_view>

#include "core/report/colour.h"

namespace drapewright::report {

/// The layers of a plan's drawing, bottom first. Screen, picture and paper use the same ones.
enum class LayerKind {
  fine_grid,
  grid,
  skin,  ///< of sections only: seen from above it is the ground itself
  film_sheet,
  seam,
  film,
  film_required,
  no_film_zone,
  no_port_zone,
  border_enough,  ///< of film, beside the wound's edge: only where some of it is short
  border_short,
  border_none,
  wound,
  undermining,
  deeper_filler,
  filler,
  unfilled,
  island,
  skin_protection,
  bridge,
  port_base,
  aperture,
  measures,
  clock,
  finding_place,
  panel,  ///< rulers, legend, scale bar and heading: around the plan, not of it
  // On paper alone, at life size: fine lines, no fills.
  cut_line,
  usual_border,
  least_border,
  guide,  ///< shows a place, is not cut
  check_bar,
  registration,
  tile_here,  ///< in the key of tiles
};

enum class Hatch { none, rising, falling, crossed, dotted, horizontal, vertical };
enum class Line { solid, dashed, short_dashed, long_dashed, dotted, dash_dot, none };

/// How a layer looks. No two layers are told apart by colour alone: line, weight or hatch differ,
/// too. Hues are those of Okabe and Ito's palette for the colour-blind (Color Universal Design,
/// 2008), darkened or lightened where WCAG 2.2 asks 3:1 against the ground.
struct LayerStyle {
  LayerKind kind;
  std::string_view id;     ///< "filler": class name in SVG, key of the switch in settings
  std::string_view title;  ///< what the legend calls it
  Colour line_on_light, fill_on_light;
  Colour line_on_dark, fill_on_dark;
  double line_mm = 0.35;
  Line line = Line::solid;
  Hatch hatch = Hatch::none;

  Colour line_colour(Ground ground) const {
    return ground == Ground::light ? line_on_light : line_on_dark;
  }
  Colour fill_colour(Ground ground) const {
    return ground == Ground::light ? fill_on_light : fill_on_dark;
  }
};

std::span<const LayerStyle> layer_styles();  ///< of a plan's drawing, bottom first
std::span<const LayerStyle> paper_styles();  ///< of cutting templates, on paper alone
const LayerStyle& style_of(LayerKind kind);

/// Lengths of dash, gap, dash, gap ... in units of the line's width; empty for a solid line.
std::span<const double> dashes_of(Line line);

/// Distance between hatch lines (or dots), the same on paper and screen, in mm.
inline constexpr double hatch_spacing_mm = 1.6;
inline constexpr double hatch_line_mm = 0.2;

}  // namespace drapewright::report
