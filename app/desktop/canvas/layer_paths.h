#pragma once

#include <QPainter>
#include <QPainterPath>
#include <vector>

#include "app/desktop/canvas/viewport.h"
#include "core/report/sketch.h"

namespace drapewright::desktop {

/// The sketch's shapes as painter paths in cm, thinned for the scale and cut off around the view.
/// Rebuilt only when the sketch, the scale or the place has changed enough to be seen.
class LayerPaths {
 public:
  void set_sketch(report::Sketch sketch);
  const report::Sketch& sketch() const { return full_; }
  /// The same with only what can be seen in `field` (pixels).
  const report::Sketch& visible_sketch(const Viewport& viewport, const QRectF& field);

  /// @pre visible_sketch was called for this viewport
  void paint(QPainter& painter, const Viewport& viewport, report::Ground ground,
             double pixels_per_mm, const std::vector<report::LayerKind>& hidden) const;

 private:
  struct LayerPath {
    report::LayerKind kind;
    std::vector<QPainterPath> areas;
    std::vector<report::Chain> chains;
  };
  void rebuild(double pixels_per_cm, const geometry::Box& window);
  void paint_layer(QPainter& painter, const LayerPath& layer, const Viewport& viewport,
                   report::Ground ground, double pixels_per_mm) const;

  report::Sketch full_;
  report::Sketch seen_;
  std::vector<LayerPath> paths_;
  double built_for_ = 0;  ///< px/cm
  geometry::Box window_;  ///< cut off at
};

}  // namespace drapewright::desktop
