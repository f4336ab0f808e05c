#pragma once

#include <QPainter>
#include <QString>
#include <optional>
#include <vector>

#include "app/desktop/canvas/plan_scene.h"
#include "core/report/annotate.h"

namespace drapewright::desktop {

/// The captions and dimension lines of what is in view, laid out around the rose and the legend.
std::vector<report::DrawnLayer> lay_out_annotations(PlanScene& scene, const Surface& surface);

/// Paints a scene on a surface: the plan inside the rulers, and what is fixed around it.
class ScenePainter {
 public:
  ScenePainter(QPainter& painter, const PlanScene& scene, const Surface& surface)
      : painter_(painter), scene_(scene), surface_(surface) {}

  void paint_ground();
  void paint_plan(const std::vector<report::DrawnLayer>& annotations);
  void paint_mark();
  /// In the field's corner.
  void paint_note(const QString& text);
  /// An empty view says what to do.
  void paint_hint(const QString& text, QFont font);
  void paint_rulers(std::optional<QPointF> cursor);

 private:
  void paint_rose();
  void paint_cursor(QPointF cursor);
  QColor ground() const;
  QColor ink() const;

  QPainter& painter_;
  const PlanScene& scene_;
  const Surface& surface_;
};

}  // namespace drapewright::desktop
