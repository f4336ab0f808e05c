#pragma once

#include <QPainter>
#include <vector>

#include "app/desktop/canvas/viewport.h"
#include "core/report/sketch.h"

namespace drapewright::desktop {

/// The sketch's shapes as painter paths in cm, thinned for the scale they are seen at. Rebuilt
/// only when the sketch or the scale has changed enough to be seen.
class LayerPaths {
 public:
  void set_sketch(report::Sketch sketch);
  const report::Sketch& sketch() const { return full_; }
  /// The same with only the points that can be seen at the scale last painted.
  const report::Sketch& visible_sketch(double pixels_per_cm);

  void paint(QPainter& painter, const Viewport& viewport, report::Ground ground,
             double pixels_per_mm, const std::vector<report::LayerKind>& hidden);

 private:
  struct LayerPath {
    report::LayerKind kind;
    std::vector<QPainterPath> areas;
    std::vector<report::Chain> chains;
  };
  void rebuild(double pixels_per_cm);
  void paint_layer(QPainter& painter, const LayerPath& layer, const Viewport& viewport,
                   report::Ground ground, double pixels_per_mm) const;

  report::Sketch full_;
  report::Sketch thin_;
  std::vector<LayerPath> paths_;
  double built_for_ = 0;  ///< px/cm
};

}  // namespace drapewright::desktop
