#pragma once

#include <QRectF>
#include <memory>
#include <optional>
#include <vector>

#include "app/desktop/canvas/layer_paths.h"
#include "app/desktop/canvas/viewport.h"
#include "core/dressing/plan.h"
#include "core/report/layer_style.h"
#include "core/wound/case.h"

namespace drapewright::desktop {

/// What is drawn on: a widget's size and ground, and the places in it that are taken.
struct Surface {
  QRectF rect;
  double pixels_per_mm = 3.78;
  report::Ground ground = report::Ground::light;
  QRectF legend;         ///< null while it is hidden
  double text_mm = 2.9;  ///< captions; the rulers and the rose are in proportion to them

  static constexpr double corner_gap_px = 8;
  double band_px() const { return 3.3 * text_mm * pixels_per_mm; }  ///< rulers
  double rose_radius_mm() const { return 3.1 * text_mm; }
  double ruler_text_mm() const { return 0.86 * text_mm; }
  QRectF field() const { return rect.adjusted(band_px(), band_px(), -1, -1); }  ///< in the rulers
  QRectF rose_box() const;
};

/// What the view shows, and how it is seen. Owns no data of the case; observes it.
struct PlanScene {
  std::shared_ptr<const wound::Case> value;
  std::shared_ptr<const dressing::Plan> plan;
  std::vector<geometry::Point> clock_centres;  ///< of the wounds
  std::vector<report::LayerKind> hidden;
  std::optional<geometry::Point> mark;  ///< a finding's place
  geometry::Box sheet = usual_sheet;  ///< what `fit` shows while nothing is drawn
  Viewport viewport;
  LayerPaths paths;

  static constexpr geometry::Box usual_sheet{{-10, -7}, {10, 7}};  ///< most wounds have room on it

  void show(std::shared_ptr<const wound::Case> new_value,
            std::shared_ptr<const dressing::Plan> new_plan);
  bool empty() const { return !value || paths.sketch().layers.empty(); }
  bool shown(report::LayerKind kind) const;
  void set_shown(report::LayerKind kind, bool visible);
  /// (0 to 12] about the nearest wound's centre; 0 without a wound.
  double hour_at(geometry::Point cm) const;

  /// The whole drawing as large as the surface has room for it.
  void fit(const Surface& surface, bool beside_legend);
  /// Nothing is cut off, and nothing much smaller than it could be.
  bool comfortable(const Surface& surface) const;
};

}  // namespace drapewright::desktop
