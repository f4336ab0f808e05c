#include "app/desktop/canvas/scene_painter.h"

#include "app/printing/painter.h"
#include "app/printing/pens.h"
#include "core/report/rose.h"
#include "core/report/rulers.h"

namespace drapewright::desktop {

using report::LayerKind;

namespace {

report::ScaleMap scale_map(const PlanScene& scene, const Surface& surface) {
  const double unit = surface.pixels_per_mm;
  const QPointF origin = scene.viewport.to_pixels({0, 0}) / unit;
  return {scene.viewport.pixels_per_cm() / unit, {origin.x(), origin.y()}};
}

geometry::Box to_mm(const QRectF& pixels, double unit) {
  return {{pixels.left() / unit, pixels.top() / unit},
          {pixels.right() / unit, pixels.bottom() / unit}};
}

}  // namespace

std::vector<report::DrawnLayer> lay_out_annotations(PlanScene& scene, const Surface& surface) {
  const double unit = surface.pixels_per_mm;
  report::AnnotationField room{
      report::widened(to_mm(surface.field(), unit), -1), {}, surface.text_mm};
  if (scene.shown(LayerKind::clock)) room.taken.push_back(to_mm(surface.rose_box(), unit));
  if (!surface.legend.isNull()) room.taken.push_back(to_mm(surface.legend, unit));
  const report::Sketch& sketch = scene.paths.visible_sketch(scene.viewport, surface.field());
  return report::annotate(sketch, scale_map(scene, surface), room, scene.hidden).layers;
}

QColor ScenePainter::ground() const {
  return printing::to_qcolor(report::ground_colour(surface_.ground));
}

QColor ScenePainter::ink() const {
  return printing::to_qcolor(report::ink_colour(surface_.ground));
}

void ScenePainter::paint_ground() { painter_.fillRect(surface_.rect, ground()); }

void ScenePainter::paint_plan(const std::vector<report::DrawnLayer>& annotations) {
  const double unit = surface_.pixels_per_mm;
  const report::Ground on = surface_.ground;
  painter_.scale(unit, unit);
  for (const report::DrawnLayer& grid :
       report::draw_grid(scale_map(scene_, surface_), to_mm(surface_.field(), unit))) {
    if (scene_.shown(grid.kind)) printing::paint_shapes(painter_, grid, on);
  }
  painter_.resetTransform();
  scene_.paths.paint(painter_, scene_.viewport, on, unit, scene_.hidden);
  painter_.scale(unit, unit);
  for (const report::DrawnLayer& layer : annotations) printing::paint_shapes(painter_, layer, on);
  for (const report::DrawnLayer& layer : annotations) printing::paint_words(painter_, layer, on);
  if (scene_.shown(LayerKind::clock)) paint_rose();
  painter_.resetTransform();
}

void ScenePainter::paint_rose() {
  const QRectF box = surface_.rose_box();
  const QPointF centre = box.center() / surface_.pixels_per_mm;
  const double reach = box.width() / 2 / surface_.pixels_per_mm;
  QColor plate = ground();
  plate.setAlphaF(0.85F);
  painter_.setPen(Qt::NoPen);
  painter_.setBrush(plate);
  painter_.drawEllipse(centre, reach, reach);
  static const wound::Case nothing_known;  // a bare sheet has its head at the top
  const wound::Case& value = scene_.value ? *scene_.value : nothing_known;
  const practice::BodySite* site = wound::site_of(value);
  const report::DrawnLayer rose = report::draw_rose(
      {centre.x(), centre.y()}, surface_.rose_radius_mm(), value.head_direction_deg,
      surface_.ruler_text_mm(), site ? site->twelve : practice::Twelve::head);
  printing::paint_shapes(painter_, rose, surface_.ground);
  printing::paint_words(painter_, rose, surface_.ground);
}

/// A ring with four hairs, on a broader one of the ground's colour: seen on any layer.
void ScenePainter::paint_mark() {
  if (!scene_.mark || !scene_.shown(LayerKind::finding_place)) return;
  const report::LayerStyle& style = report::style_of(LayerKind::finding_place);
  const QPointF at = scene_.viewport.to_pixels(*scene_.mark);
  const double width = style.line_mm * surface_.pixels_per_mm;
  const auto draw = [&](QColor colour, double pen_width) {
    painter_.setPen(QPen(colour, pen_width, Qt::SolidLine, Qt::RoundCap));
    painter_.setBrush(Qt::NoBrush);
    painter_.drawEllipse(at, 13, 13);
    for (const QPointF way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)}) {
      painter_.drawLine(at + 8 * way, at + 19 * way);
    }
  };
  draw(ground(), width + 4);
  draw(printing::to_qcolor(style.line_colour(surface_.ground)), width);
}

void ScenePainter::paint_note(const QString& text) {
  QRectF box = painter_.fontMetrics().boundingRect(text);
  box.moveTopLeft(surface_.field().topLeft() +
                  QPointF(Surface::corner_gap_px + 6, Surface::corner_gap_px + 4));
  painter_.setPen(Qt::NoPen);
  painter_.setBrush(ground());
  painter_.drawRoundedRect(box.adjusted(-6, -4, 6, 4), 4, 4);
  painter_.setPen(ink());
  painter_.drawText(box, Qt::AlignCenter | Qt::TextDontClip, text);
}

void ScenePainter::paint_hint(const QString& text, QFont font) {
  painter_.setPen(ink());
  font.setPointSizeF(font.pointSizeF() * 1.15);
  painter_.setFont(font);
  painter_.drawText(surface_.field().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap,
                    text);
}

void ScenePainter::paint_rulers(std::optional<QPointF> cursor) {
  const double unit = surface_.pixels_per_mm;
  const QRectF& rect = surface_.rect;
  painter_.fillRect(QRectF(rect.left(), rect.top(), rect.width(), surface_.band_px()), ground());
  painter_.fillRect(QRectF(rect.left(), rect.top(), surface_.band_px(), rect.height()), ground());
  painter_.scale(unit, unit);
  const report::DrawnLayer rulers =
      report::draw_rulers(scale_map(scene_, surface_), to_mm(surface_.field(), unit),
                          surface_.band_px() / unit, surface_.ruler_text_mm());
  printing::paint_shapes(painter_, rulers, surface_.ground);
  printing::paint_words(painter_, rulers, surface_.ground);
  painter_.resetTransform();
  if (cursor && surface_.field().contains(*cursor)) paint_cursor(*cursor);
}

void ScenePainter::paint_cursor(QPointF cursor) {
  const double band = surface_.band_px();
  painter_.setPen(Qt::NoPen);
  painter_.setBrush(
      printing::to_qcolor(report::style_of(LayerKind::finding_place).line_colour(surface_.ground)));
  const double x = cursor.x(), y = cursor.y();
  painter_.drawPolygon(QPolygonF({{x - 4, band - 7}, {x + 4, band - 7}, {x, band}}));
  painter_.drawPolygon(QPolygonF({{band - 7, y - 4}, {band - 7, y + 4}, {band, y}}));
}

}  // namespace drapewright::desktop
