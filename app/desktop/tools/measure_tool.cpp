#include "app/desktop/tools/measure_tool.h"

#include "app/desktop/canvas/plan_view.h"
#include "app/wording/spoken.h"
#include "core/base/numbers.h"
#include "core/geometry/measures.h"
#include "core/tracing/line.h"
#include "core/tracing/loops.h"

namespace drapewright::desktop {

using geometry::Ring;

void MeasureTool::give_up() {
  finished_ = false;
  ChainTool::give_up();
}

void MeasureTool::paint_drawing(QPainter& painter) const {
  const Ring line = measured();
  if (points().empty()) return;
  paint_line(painter, line, false);
  painter.setPen(QPen(view().palette().color(QPalette::WindowText), 1, Qt::DotLine));
  if (line.size() > 2) {
    painter.drawLine(view().to_pixels(line.back()), view().to_pixels(line.front()));
  }
}

QStringList MeasureTool::words() const {
  const Ring line = measured();
  if (points().empty() || line.size() < 2) return {};
  if (!desk().gate().isEmpty()) return {spoken("no scale, no length")};
  QStringList lines{length_words(tracing::line_length(line))};
  if (line.size() < 3) return lines;
  lines << angle_words(line);
  lines << (tracing::first_crossing(line, true)
                ? spoken("crosses itself: no area")
                : QString::fromStdString(format_number(geometry::area(line), 1)) + " cm\u00b2");
  return lines;
}

}  // namespace drapewright::desktop
