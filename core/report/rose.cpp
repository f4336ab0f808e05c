#include "core/report/rose.h"

#include <cmath>
#include <string>

#include "core/base/say.h"
#include "core/geometry/clock.h"

namespace drapewright::report {

using geometry::Point;

namespace {

Point on_dial(Point centre, double radius, double direction_deg) {
  const double angle = geometry::radians(direction_deg);
  return {centre.x + radius * std::cos(angle), centre.y - radius * std::sin(angle)};
}

Label word(Point middle, std::string text, double size_mm, bool bold) {
  return {.at = {middle.x, middle.y + 0.36 * size_mm},
          .text = std::move(text),
          .size_mm = size_mm,
          .anchor = Label::Anchor::middle,
          .layer = LayerKind::clock,
          .bold = bold};
}

}  // namespace

double rose_reach_mm(double radius_mm, double text_mm) { return radius_mm + 1.9 * text_mm; }

DrawnLayer draw_rose(Point centre_mm, double radius_mm, double head_direction_deg, double text_mm,
                     practice::Twelve twelve) {
  DrawnLayer rose{LayerKind::clock, {}, {}, {}};
  Stroke dial{{}, LayerKind::clock};
  for (int deg = 0; deg <= 360; deg += 6) dial.points.push_back(on_dial(centre_mm, radius_mm, deg));
  rose.strokes.push_back(std::move(dial));
  for (int hour = 1; hour <= 12; ++hour) {
    const double direction = geometry::clock_direction_deg(hour, head_direction_deg);
    const double inner = hour % 3 == 0 ? 0.78 : 0.88;
    rose.strokes.push_back({{on_dial(centre_mm, inner * radius_mm, direction),
                             on_dial(centre_mm, radius_mm, direction)},
                            LayerKind::clock});
    rose.labels.push_back(word(on_dial(centre_mm, radius_mm + 0.85 * text_mm, direction),
                               std::to_string(hour), text_mm, hour == 12));
  }
  const double head = geometry::clock_direction_deg(12, head_direction_deg);
  rose.strokes.push_back({{on_dial(centre_mm, 0.55 * radius_mm, head + 180),
                           on_dial(centre_mm, 0.7 * radius_mm, head)},
                          LayerKind::clock,
                          false,
                          true});
  // Beside the arrow, not on it.
  rose.labels.push_back(word(on_dial(centre_mm, 0.45 * radius_mm, head - 90),
                             say(practice::name_of(twelve)), text_mm, true));
  return rose;
}

}  // namespace drapewright::report
