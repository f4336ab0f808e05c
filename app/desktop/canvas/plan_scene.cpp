#include "app/desktop/canvas/plan_scene.h"

#include <algorithm>

#include "core/geometry/clock.h"
#include "core/geometry/measures.h"
#include "core/report/rose.h"

namespace drapewright::desktop {

using geometry::Point;

namespace {

constexpr double fit_margin = 4.5;  ///< room for dimension lines and captions, in text heights

/// The field less the legend's column, where the legend leaves enough.
QRectF room_to_fit(const Surface& surface, bool beside_legend) {
  QRectF room = surface.field();
  const double column =
      std::max(surface.legend.width(), surface.rose_box().width()) + Surface::corner_gap_px;
  if (beside_legend && room.width() > 3 * column) room.setRight(room.right() - column);
  const double margin = fit_margin * surface.text_mm * surface.pixels_per_mm;
  const double across = std::min(margin, room.width() / 4);
  const double up = std::min(margin, room.height() / 4);
  return room.adjusted(across, up, -across, -up);
}

std::vector<Point> centres_of(const wound::Case& value) {
  std::vector<Point> centres;
  for (const wound::Wound& wound : value.current().wounds) {
    if (wound.outline_cm.size() < 3) continue;
    centres.push_back(geometry::centroid(geometry::Region{{wound.outline_cm, wound.islands_cm}}));
  }
  return centres;
}

}  // namespace

QRectF Surface::rose_box() const {
  const double reach = report::rose_reach_mm(rose_radius_mm(), ruler_text_mm()) * pixels_per_mm;
  const QRectF inside = field();
  return {inside.right() - corner_gap_px - 2 * reach, inside.top() + corner_gap_px, 2 * reach,
          2 * reach};
}

void PlanScene::show(std::shared_ptr<const wound::Case> new_value,
                     std::shared_ptr<const dressing::Plan> new_plan) {
  value = std::move(new_value);
  plan = value ? std::move(new_plan) : nullptr;
  paths.set_sketch(!value ? report::Sketch{}
                   : plan ? report::sketch_plan(*value, *plan)
                          : report::sketch_case(*value));
  clock_centres = value ? centres_of(*value) : std::vector<Point>{};
}

bool PlanScene::shown(report::LayerKind kind) const { return !std::ranges::count(hidden, kind); }

void PlanScene::set_shown(report::LayerKind kind, bool visible) {
  std::erase(hidden, kind);
  if (!visible) hidden.push_back(kind);
}

double PlanScene::hour_at(Point cm) const {
  if (clock_centres.empty()) return 0;
  const Point nearest = *std::ranges::min_element(
      clock_centres, {}, [&](Point centre) { return geometry::distance(centre, cm); });
  return geometry::clock_hour(nearest, cm, value->head_direction_deg);
}

void PlanScene::fit(const Surface& surface, bool beside_legend) {
  viewport.fit(empty() ? sheet : paths.sketch().extent, room_to_fit(surface, beside_legend));
}

bool PlanScene::comfortable(const Surface& surface) const {
  const geometry::Box& extent = paths.sketch().extent;
  const QRectF seen =
      QRectF(viewport.to_pixels(extent.low), viewport.to_pixels(extent.high)).normalized();
  const QRectF field = surface.field();
  return field.contains(seen) &&
         (seen.width() > 0.4 * field.width() || seen.height() > 0.4 * field.height());
}

}  // namespace drapewright::desktop
