#include "app/desktop/canvas/layer_paths.h"

#include <algorithm>

#include "app/desktop/canvas/visible_part.h"
#include "app/printing/painter.h"
#include "app/printing/pens.h"

namespace drapewright::desktop {

using report::LayerKind;

namespace {

constexpr double tolerance_px = 0.6;
constexpr double cut_margin_px = 8;     ///< keeps the cut edges' own lines out of sight
constexpr double rebuild_factor = 1.6;  ///< zoom beyond which thinning would show or be wasted

}  // namespace

void LayerPaths::set_sketch(report::Sketch sketch) {
  full_ = std::move(sketch);
  built_for_ = 0;
}

void LayerPaths::rebuild(double pixels_per_cm, const geometry::Box& window) {
  built_for_ = pixels_per_cm;
  window_ = window;
  seen_ = visible_part(full_, window, tolerance_px / pixels_per_cm);
  paths_.clear();
  for (const report::SketchLayer& layer : seen_.layers) {
    LayerPath path{layer.kind, {}, layer.chains};
    for (const geometry::Polygon& polygon : layer.areas) {
      path.areas.push_back(printing::to_path(polygon));
    }
    paths_.push_back(std::move(path));
  }
}

const report::Sketch& LayerPaths::visible_sketch(const Viewport& viewport, const QRectF& field) {
  const double scale = viewport.pixels_per_cm();
  const geometry::Point low = viewport.to_cm(field.bottomLeft());
  const geometry::Point high = viewport.to_cm(field.topRight());
  const double margin = cut_margin_px / scale;
  const bool covered = low.x - margin >= window_.low.x && low.y - margin >= window_.low.y &&
                       high.x + margin <= window_.high.x && high.y + margin <= window_.high.y;
  if (built_for_ == 0 || !covered || scale > rebuild_factor * built_for_ ||
      scale < built_for_ / rebuild_factor) {
    const geometry::Point around = 0.5 * (high - low) + geometry::Point{margin, margin};
    rebuild(scale, {low - around, high + around});
  }
  return seen_;
}

void LayerPaths::paint_layer(QPainter& painter, const LayerPath& layer, const Viewport& viewport,
                             report::Ground ground, double pixels_per_mm) const {
  const report::LayerStyle& style = report::style_of(layer.kind);
  const double dots = pixels_per_mm * painter.device()->devicePixelRatioF();
  QBrush hatch = printing::hatch_brush(style, ground, dots, pixels_per_mm);
  // The hatch keeps its size on screen, but moves with the plan.
  const QTransform view = viewport.transform();
  const double unit = 1 / viewport.pixels_per_cm();
  hatch.setTransform(hatch.transform() * QTransform::fromScale(unit, -unit));
  const QPen pen = printing::layer_pen(style, ground, pixels_per_mm, true);
  painter.setWorldTransform(view);
  for (const QPainterPath& path : layer.areas) {
    if (style.fill_colour(ground).alpha > 0) {
      painter.fillPath(path, printing::to_qcolor(style.fill_colour(ground)));
    }
    if (hatch.style() != Qt::NoBrush) painter.fillPath(path, hatch);
    painter.strokePath(path, pen);
  }
  painter.resetTransform();
  report::DrawnLayer chains{layer.kind, {}, {}, {}};
  for (const report::Chain& chain : layer.chains) {
    report::Stroke stroke{{}, layer.kind, false, chain.arrow_at_end};
    for (const geometry::Point p : chain.points) {
      const QPointF pixel = viewport.to_pixels(p) / pixels_per_mm;
      stroke.points.push_back({pixel.x(), pixel.y()});
    }
    chains.strokes.push_back(std::move(stroke));
  }
  painter.scale(pixels_per_mm, pixels_per_mm);
  printing::paint_shapes(painter, chains, ground);
  painter.resetTransform();
}

void LayerPaths::paint(QPainter& painter, const Viewport& viewport, report::Ground ground,
                       double pixels_per_mm, const std::vector<LayerKind>& hidden) const {
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  for (const LayerPath& layer : paths_) {
    if (!std::ranges::count(hidden, layer.kind)) {
      paint_layer(painter, layer, viewport, ground, pixels_per_mm);
    }
  }
  painter.restore();
}

}  // namespace drapewright::desktop
