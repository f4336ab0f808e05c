#include "app/desktop/tools/pocket_mark.h"

#include <QPainterPath>

#include "app/desktop/canvas/plan_view.h"
#include "app/printing/pens.h"
#include "core/geometry/measures.h"
#include "core/report/undermining_sketch.h"

namespace drapewright::desktop {
namespace {

constexpr double halo_px = 9;
constexpr double line_px = 4;

QPolygonF in_pixels(const PlanView& view, const std::vector<geometry::Point>& points) {
  QPolygonF polygon;
  for (const geometry::Point p : points) polygon << view.to_pixels(p);
  return polygon;
}

}  // namespace

void PocketMark::mark(const Chosen& chosen) {
  // The other table letting go of its row does not take this one's mark away.
  if (chosen.row < 0 && chosen.kind != chosen_.kind) return;
  chosen_ = chosen;
  view_.update();
}

void PocketMark::paint(QPainter& painter, std::optional<int>) const {
  const auto value = view_.shown_case();
  if (chosen_.row < 0 || value == nullptr) return;
  const auto& wounds = value->current().wounds;
  const auto row = static_cast<std::size_t>(chosen_.row);
  if (chosen_.wound >= wounds.size() || wounds[chosen_.wound].outline_cm.size() < 3) return;
  const auto& wound = wounds[chosen_.wound];
  const geometry::Point centre =
      geometry::centroid(geometry::Region{{wound.outline_cm, wound.islands_cm}});
  const report::UnderminingSketch sketch(wound.outline_cm, centre, value->head_direction_deg);
  QPainterPath path;
  if (chosen_.kind == Kind::range && row < wound.undermining.size()) {
    path.addPolygon(in_pixels(view_, sketch.pocket(wound.undermining[row]).outer));
    path.closeSubpath();
  } else if (chosen_.kind == Kind::tunnel && row < wound.tunnels.size()) {
    const geometry::Segment line = sketch.tunnel(wound.tunnels[row]);
    path.addPolygon(in_pixels(view_, {line.from, line.to}));
  }
  const QColor halo = printing::to_qcolor(report::ground_colour(view_.ground()));
  const QColor ink = view_.palette().color(QPalette::Highlight);
  for (const auto& [colour, width] : {std::pair(halo, halo_px), std::pair(ink, line_px)}) {
    painter.strokePath(path, QPen(colour, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
  }
}

}  // namespace drapewright::desktop
