#include "core/report/legend.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/say.h"
#include "core/report/text_size.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;

namespace {

constexpr std::array reading_order{
    LayerKind::wound,         LayerKind::skin,        LayerKind::island,
    LayerKind::undermining,   LayerKind::filler,      LayerKind::deeper_filler,
    LayerKind::unfilled,      LayerKind::bridge,      LayerKind::skin_protection,
    LayerKind::film_required, LayerKind::film,        LayerKind::film_sheet,
    LayerKind::seam,          LayerKind::border_none, LayerKind::border_short,
    LayerKind::border_enough, LayerKind::aperture,    LayerKind::port_base,
    LayerKind::no_film_zone,  LayerKind::no_port_zone};

/// Of these there are only lines.
bool is_line(LayerKind kind) {
  return kind == LayerKind::seam || kind == LayerKind::border_enough ||
         kind == LayerKind::border_short || kind == LayerKind::border_none;
}

bool has(const Sketch& sketch, LayerKind kind) {
  return std::ranges::count(sketch.layers, kind, &SketchLayer::kind) > 0;
}

double widest_title(const std::vector<LayerKind>& kinds, double text_mm) {
  double widest = 0;
  for (const LayerKind kind : kinds) {
    widest = std::max(widest, text_width_mm(say(style_of(kind).title), text_mm));
  }
  return widest;
}

void append(DrawnLayer& to, DrawnLayer from) {
  std::ranges::move(from.areas, std::back_inserter(to.areas));
  std::ranges::move(from.strokes, std::back_inserter(to.strokes));
  std::ranges::move(from.labels, std::back_inserter(to.labels));
}

Label line_of_text(Point at, std::string text, double text_mm) {
  return {.at = at, .text = std::move(text), .size_mm = text_mm, .layer = LayerKind::panel};
}

}  // namespace

std::vector<LayerKind> legend_layers(const Sketch& sketch) {
  std::vector<LayerKind> kinds;
  std::ranges::copy_if(reading_order, std::back_inserter(kinds),
                       [&](LayerKind kind) { return has(sketch, kind); });
  return kinds;
}

DrawnLayer draw_swatch(LayerKind kind, const Box& box) {
  const auto& [a, b] = box;
  if (is_line(kind)) {
    const double middle = 0.5 * (a.y + b.y);
    return {kind, {}, {{{{a.x, middle}, {b.x, middle}}, kind}}, {}};
  }
  const geometry::Ring ring{{a.x, a.y}, {b.x, a.y}, {b.x, b.y}, {a.x, b.y}};
  return {kind, {Area{{{ring, {}}}, kind}}, {}, {}};
}

std::vector<std::string> legend_notes(const Sketch& sketch) {
  std::vector<std::string> notes;
  if (!sketch.piece_example.empty()) notes.push_back(sketch.piece_example);
  return notes;
}

LegendBlock draw_legend(const std::vector<LayerKind>& kinds, const std::vector<std::string>& notes,
                        Point upper_left, double width_mm, double text_mm) {
  LegendBlock block{{LayerKind::panel, {}, {}, {}}, 0};
  const double row = 1.85 * text_mm;
  const double swatch = 3.4 * text_mm;
  const double column = swatch + text_mm + widest_title(kinds, text_mm) + 1.5 * text_mm;
  const int columns = std::max(1, static_cast<int>(width_mm / column));
  const int rows = (static_cast<int>(kinds.size()) + columns - 1) / columns;
  for (int i = 0; i < static_cast<int>(kinds.size()); ++i) {
    const Point at{upper_left.x + column * (i / rows), upper_left.y + row * (i % rows)};
    append(block.layer, draw_swatch(kinds[static_cast<std::size_t>(i)],
                                    {{at.x, at.y}, {at.x + swatch, at.y + 0.72 * row}}));
    block.layer.labels.push_back(
        line_of_text({at.x + swatch + text_mm, at.y + 0.55 * row},
                     say(style_of(kinds[static_cast<std::size_t>(i)]).title), text_mm));
  }
  double y = upper_left.y + rows * row + text_mm;
  for (const std::string& note : notes) {
    for (std::string& line : wrapped(note, width_mm, text_mm)) {
      block.layer.labels.push_back(line_of_text({upper_left.x, y}, std::move(line), text_mm));
      y += 1.5 * text_mm;
    }
  }
  block.height_mm = y - text_mm - upper_left.y;
  return block;
}

}  // namespace drapewright::report
