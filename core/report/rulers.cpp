#include "core/report/rulers.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/base/numbers.h"

namespace drapewright::report {

using geometry::Box;
using geometry::Point;

namespace {

constexpr double least_fine_mm = 1.9;
constexpr double least_label_mm = 10;

/// Ticks at whole multiples of a step: `at(i)` is the i-th one's place in cm.
struct Ticks {
  long first = 0;
  long last = -1;
  double step = 1;
  double at(long i) const { return static_cast<double>(i) * step; }
};

Ticks ticks_between(double low, double high, double step) {
  return {static_cast<long>(std::ceil(low / step - 1e-9)),
          static_cast<long>(std::floor(high / step + 1e-9)), step};
}

bool is_multiple(double value, double step) {
  const double ratio = value / step;
  return std::abs(ratio - std::round(ratio)) < 1e-6;
}

void add_lines(DrawnLayer& layer, const ScaleMap& map, const Box& field, double step,
               double unless_multiple_of) {
  const Point low = map.to_cm({field.low.x, field.high.y});
  const Point high = map.to_cm({field.high.x, field.low.y});
  const auto wanted = [&](double at) {
    return unless_multiple_of == 0 || !is_multiple(at, unless_multiple_of);
  };
  const Ticks across = ticks_between(low.x, high.x, step);
  for (long i = across.first; i <= across.last; ++i) {
    if (!wanted(across.at(i))) continue;
    const double x = map.to_mm({across.at(i), 0}).x;
    layer.strokes.push_back({{{x, field.low.y}, {x, field.high.y}}, layer.kind});
  }
  const Ticks up = ticks_between(low.y, high.y, step);
  for (long i = up.first; i <= up.last; ++i) {
    if (!wanted(up.at(i))) continue;
    const double y = map.to_mm({0, up.at(i)}).y;
    layer.strokes.push_back({{{field.low.x, y}, {field.high.x, y}}, layer.kind});
  }
}

/// One ruler; `point` turns a place along it (cm) and a distance outwards (mm) into a point.
template <class PointAt>
void add_ticks(DrawnLayer& layer, Ticks ticks, const RulerSteps& steps, double band,
               PointAt point) {
  for (long i = ticks.first; i <= ticks.last; ++i) {
    const double at = ticks.at(i);
    const double length = is_multiple(at, steps.label_cm)    ? 0.45 * band
                          : is_multiple(at, steps.coarse_cm) ? 0.35 * band
                                                             : 0.2 * band;
    layer.strokes.push_back({{point(at, 0.0), point(at, length)}, LayerKind::panel});
  }
}

Label ruler_label(Point at, double value, double text_mm, Label::Anchor anchor) {
  return {.at = at,
          .text = format_short(value, 1),
          .size_mm = text_mm,
          .anchor = anchor,
          .layer = LayerKind::panel};
}

}  // namespace

RulerSteps ruler_steps(double mm_per_cm) {
  RulerSteps steps{10, 50, 10};
  for (const auto& [fine, coarse] :
       {std::pair{0.1, 1.0}, std::pair{1.0, 5.0}, std::pair{5.0, 10.0}}) {
    if (fine * mm_per_cm < least_fine_mm) continue;
    steps.fine_cm = fine;
    steps.coarse_cm = coarse;
    break;
  }
  for (const double label : {0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0}) {
    steps.label_cm = label;
    if (label * mm_per_cm >= least_label_mm) break;
  }
  return steps;
}

std::vector<DrawnLayer> draw_grid(const ScaleMap& map, const Box& field_mm) {
  const RulerSteps steps = ruler_steps(map.mm_per_cm);
  DrawnLayer fine{LayerKind::fine_grid, {}, {}, {}};
  DrawnLayer coarse{LayerKind::grid, {}, {}, {}};
  add_lines(fine, map, field_mm, steps.fine_cm, steps.coarse_cm);
  add_lines(coarse, map, field_mm, steps.coarse_cm, 0);
  return {fine, coarse};
}

DrawnLayer draw_rulers(const ScaleMap& map, const Box& field_mm, double band_mm, double text_mm) {
  const RulerSteps steps = ruler_steps(map.mm_per_cm);
  const Point low = map.to_cm({field_mm.low.x, field_mm.high.y});
  const Point high = map.to_cm({field_mm.high.x, field_mm.low.y});
  DrawnLayer layer{LayerKind::panel, {}, {}, {}};
  add_ticks(layer, ticks_between(low.x, high.x, steps.fine_cm), steps, band_mm,
            [&](double at, double out) {
              return Point{map.to_mm({at, 0}).x, field_mm.low.y - out};
            });
  add_ticks(layer, ticks_between(low.y, high.y, steps.fine_cm), steps, band_mm,
            [&](double at, double out) {
              return Point{field_mm.low.x - out, map.to_mm({0, at}).y};
            });
  const Ticks across = ticks_between(low.x, high.x, steps.label_cm);
  for (long i = across.first; i <= across.last; ++i) {
    const double x = map.to_mm({across.at(i), 0}).x;
    if (x < field_mm.low.x + text_mm || x > field_mm.high.x - text_mm) continue;
    layer.labels.push_back(ruler_label({x, field_mm.low.y - 0.55 * band_mm}, across.at(i), text_mm,
                                       Label::Anchor::middle));
  }
  const Ticks up = ticks_between(low.y, high.y, steps.label_cm);
  for (long i = up.first; i <= up.last; ++i) {
    const double y = map.to_mm({0, up.at(i)}).y;
    if (y < field_mm.low.y + text_mm || y > field_mm.high.y - text_mm) continue;
    layer.labels.push_back(ruler_label({field_mm.low.x - 0.48 * band_mm, y + 0.35 * text_mm},
                                       up.at(i), text_mm, Label::Anchor::end));
  }
  const auto& [a, b] = field_mm;
  layer.strokes.push_back(
      {{{a.x, a.y}, {b.x, a.y}, {b.x, b.y}, {a.x, b.y}, {a.x, a.y}}, LayerKind::panel});
  layer.labels.push_back({.at = {a.x - 0.5 * band_mm, a.y - 0.55 * band_mm},
                          .text = "cm",
                          .size_mm = text_mm,
                          .anchor = Label::Anchor::end,
                          .layer = LayerKind::panel});
  return layer;
}

}  // namespace drapewright::report
