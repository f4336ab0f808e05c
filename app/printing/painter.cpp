#include "app/printing/painter.h"

#include <QFont>
#include <QFontMetricsF>
#include <cmath>

#include "app/printing/pens.h"
#include "core/report/arrow_head.h"
#include "core/report/text_size.h"

namespace drapewright::printing {

using report::Label;

namespace {

double pixels_per_mm(const QPainter& painter) {
  const QTransform& world = painter.deviceTransform();
  return std::hypot(world.m11(), world.m12());
}

void paint_area(QPainter& painter, const report::Area& area, report::Ground ground) {
  const report::LayerStyle& style = report::style_of(area.layer);
  const QBrush hatch = hatch_brush(style, ground, pixels_per_mm(painter), 1);
  for (const geometry::Polygon& polygon : area.region) {
    const QPainterPath path = to_path(polygon);
    if (style.fill_colour(ground).alpha > 0) {
      painter.fillPath(path, to_qcolor(style.fill_colour(ground)));
    }
    if (hatch.style() != Qt::NoBrush) painter.fillPath(path, hatch);
    painter.strokePath(path, layer_pen(style, ground, 1));
  }
}

void paint_arrow(QPainter& painter, geometry::Point tip, geometry::Point from, QColor colour) {
  const geometry::Ring head = report::arrow_head(tip, from);
  painter.fillPath(to_path({head, {}}), colour);
}

void paint_stroke(QPainter& painter, const report::Stroke& stroke, report::Ground ground) {
  const auto& points = stroke.points;
  if (points.size() < 2) return;
  const report::LayerStyle& style = report::style_of(stroke.layer);
  QPainterPath path(QPointF(points[0].x, points[0].y));
  for (std::size_t i = 1; i < points.size(); ++i) path.lineTo(points[i].x, points[i].y);
  painter.strokePath(path, layer_pen(style, ground, 1));
  const QColor colour = to_qcolor(style.line_colour(ground));
  if (stroke.arrow_at_start) paint_arrow(painter, points[0], points[1], colour);
  if (stroke.arrow_at_end) paint_arrow(painter, points.back(), points[points.size() - 2], colour);
}

void paint_plate(QPainter& painter, const Label& label, report::Ground ground) {
  const geometry::Box box = report::label_box(label);
  QColor colour = to_qcolor(report::ground_colour(ground));
  colour.setAlphaF(static_cast<float>(report::plate_opacity));
  painter.setPen(Qt::NoPen);
  painter.setBrush(colour);
  painter.drawRoundedRect(
      QRectF(box.low.x, box.low.y, box.width(), box.height()).adjusted(-0.4, -0.2, 0.4, 0.2), 0.6,
      0.6);
}

/// In device pixels, where fonts have their hinting and whole sizes; rounded down, so that no text
/// outgrows the room it was given.
void paint_label(QPainter& painter, const Label& label, report::Ground ground) {
  const QTransform world = painter.worldTransform();
  const double scale = std::hypot(world.m11(), world.m12());
  QFont font = painter.font();
  font.setPixelSize(std::max(1, static_cast<int>(std::floor(label.size_mm * scale + 1e-6))));
  font.setBold(label.bold);
  const QString text = QString::fromStdString(label.text);
  const double width = QFontMetricsF(font, painter.device()).horizontalAdvance(text);
  const double shift = label.anchor == Label::Anchor::start    ? 0
                       : label.anchor == Label::Anchor::middle ? width / 2
                                                               : width;
  painter.save();
  painter.resetTransform();
  painter.translate(world.map(QPointF(label.at.x, label.at.y)));
  painter.rotate(-label.angle_deg);
  painter.setFont(font);
  painter.setPen(to_qcolor(report::ink_colour(ground)));
  painter.drawText(QPointF(-shift, 0), text);
  painter.restore();
}

}  // namespace

void paint_shapes(QPainter& painter, const report::DrawnLayer& layer, report::Ground ground) {
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
  for (const report::Area& area : layer.areas) paint_area(painter, area, ground);
  for (const report::Stroke& stroke : layer.strokes) paint_stroke(painter, stroke, ground);
  painter.restore();
}

void paint_words(QPainter& painter, const report::DrawnLayer& layer, report::Ground ground) {
  painter.save();
  painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
  for (const Label& label : layer.labels) {
    if (label.plate) paint_plate(painter, label, ground);
    paint_label(painter, label, ground);
  }
  painter.restore();
}

namespace {

void paint_layers(QPainter& painter, const report::Drawing& drawing, report::Ground ground) {
  for (const report::DrawnLayer& layer : drawing.layers) paint_shapes(painter, layer, ground);
  for (const report::DrawnLayer& layer : drawing.layers) paint_words(painter, layer, ground);
}

}  // namespace

void paint(QPainter& painter, const report::Drawing& drawing, report::Ground ground) {
  painter.save();
  painter.fillRect(QRectF(0, 0, drawing.width_mm, drawing.height_mm),
                   to_qcolor(report::ground_colour(ground)));
  paint_layers(painter, drawing, ground);
  painter.restore();
}

void paint_on_paper(QPainter& painter, const report::Drawing& drawing) {
  painter.save();
  paint_layers(painter, drawing, report::Ground::light);
  painter.restore();
}

}  // namespace drapewright::printing
