#include "app/desktop/tools/outward_tool.h"

#include <algorithm>
#include <cmath>

#include "app/desktop/canvas/plan_view.h"
#include "app/desktop/document/case_document.h"
#include "app/desktop/tools/tool_words.h"
#include "app/wording/spoken.h"
#include "core/geometry/clock.h"
#include "core/geometry/distance.h"
#include "core/geometry/measures.h"
#include "core/tracing/edge_place.h"

namespace drapewright::desktop {
namespace {

using geometry::Point;
using geometry::Ring;

/// To a quarter of an hour, as the clock method is spoken.
double quarter(double hour) {
  const double rounded = std::round(hour * 4) / 4;
  return rounded <= 0 ? 12 : rounded;
}

}  // namespace

QString OutwardTool::obstacle() const {
  if (!desk().has_outline() || desk().target().ref.kind != ShapeRef::Kind::wound) {
    return spoken("Choose a wound in the list first.");
  }
  const double far = tracing::nearest_on_edge(desk().outline(), pen()).distance_cm;
  return far <= reach_cm(view()) ? QString() : spoken("Start on the edge of the chosen wound.");
}

OutwardTool::Reach OutwardTool::reach_of(const Ring& stroke) const {
  const auto& value = desk().document().value();
  const auto& wound = value.current().wounds.at(desk().target().ref.index);
  const geometry::Region region{{wound.outline_cm, wound.islands_cm}};
  const Point centre = geometry::centroid(region);
  const double head = value.head_direction_deg;
  const bool outside = !geometry::contains(geometry::Polygon{wound.outline_cm, {}}, stroke.back());
  double out_cm =
      outside ? tracing::nearest_on_edge(wound.outline_cm, stroke.back()).distance_cm : 0;
  double from = quarter(geometry::clock_hour(centre, stroke.front(), head));
  double to = quarter(geometry::clock_hour(centre, stroke.back(), head));
  const double start = from;
  // Which way round it was drawn: the shorter way, and clockwise ranges are what the case holds.
  if (geometry::clock_span(from, to) > 6 && from != to) std::swap(from, to);
  return {start, from, to, std::round(out_cm * 10) / 10};
}

void OutwardTool::done(const Ring& stroke) {
  const QString refused = mark(reach_of(stroke));
  if (!refused.isEmpty()) desk().say(refused);
}

QStringList OutwardTool::words() const {
  if (stroke().size() < 2) return {};
  return {describe(reach_of(stroke()))};
}

void OutwardTool::paint_drawing(QPainter& painter) const {
  if (stroke().size() > 1) paint_line(painter, {stroke().front(), stroke().back()}, false);
}

wound::Wound& OutwardTool::target_wound(wound::Case& value) const {
  return value.current().wounds.at(desk().target().ref.index);
}

}  // namespace drapewright::desktop
