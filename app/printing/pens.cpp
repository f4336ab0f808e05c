#include "app/printing/pens.h"

#include <QImage>
#include <QPainter>
#include <QPolygonF>
#include <cmath>
#include <numbers>

namespace drapewright::printing {

using report::Hatch;

namespace {

QPolygonF to_polygon(const geometry::Ring& ring) {
  QPolygonF polygon;
  polygon.reserve(static_cast<qsizetype>(ring.size()));
  for (const geometry::Point p : ring) polygon.append({p.x, p.y});
  return polygon;
}

bool is_diagonal(Hatch hatch) {
  return hatch == Hatch::rising || hatch == Hatch::falling || hatch == Hatch::crossed;
}

/// The tile's lines run on over its edges, so that neighbours join.
void draw_hatch(QPainter& painter, Hatch hatch, double side, double line) {
  const QPointF middle(side / 2, side / 2);
  for (const double shift : {-side, 0.0, side}) {
    if (hatch == Hatch::rising || hatch == Hatch::crossed) {
      painter.drawLine(QPointF(shift - side, 2 * side), QPointF(shift + 2 * side, -side));
    }
    if (hatch == Hatch::falling || hatch == Hatch::crossed) {
      painter.drawLine(QPointF(shift - side, -side), QPointF(shift + 2 * side, 2 * side));
    }
  }
  if (hatch == Hatch::horizontal) painter.drawLine(QPointF(0, side / 2), QPointF(side, side / 2));
  if (hatch == Hatch::vertical) painter.drawLine(QPointF(side / 2, 0), QPointF(side / 2, side));
  if (hatch == Hatch::dotted) {
    painter.setBrush(painter.pen().color());
    painter.setPen(Qt::NoPen);
    painter.drawEllipse(middle, 1.6 * line, 1.6 * line);
  }
}

}  // namespace

QColor to_qcolor(report::Colour colour) {
  return QColor(colour.red, colour.green, colour.blue, colour.alpha);
}

QPen layer_pen(const report::LayerStyle& style, report::Ground ground, double units_per_mm,
               bool cosmetic) {
  if (style.line == report::Line::none) return QPen(Qt::NoPen);
  QPen pen(to_qcolor(style.line_colour(ground)), style.line_mm * units_per_mm);
  pen.setCapStyle(Qt::FlatCap);
  pen.setJoinStyle(Qt::RoundJoin);
  pen.setCosmetic(cosmetic);
  const auto dashes = report::dashes_of(style.line);
  if (!dashes.empty()) pen.setDashPattern(QList<qreal>(dashes.begin(), dashes.end()));
  return pen;
}

QBrush hatch_brush(const report::LayerStyle& style, report::Ground ground, double pixels_per_mm,
                   double units_per_mm) {
  if (style.hatch == Hatch::none) return QBrush(Qt::NoBrush);
  const double side_mm =
      report::hatch_spacing_mm * (is_diagonal(style.hatch) ? std::numbers::sqrt2 : 1);
  const int side = std::max(4, static_cast<int>(std::lround(side_mm * pixels_per_mm)));
  const double line = std::max(0.7, report::hatch_line_mm * side / side_mm);
  QImage tile(side, side, QImage::Format_ARGB32_Premultiplied);
  tile.fill(Qt::transparent);
  QPainter painter(&tile);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(QPen(to_qcolor(style.line_colour(ground)), line));
  draw_hatch(painter, style.hatch, side, line);
  painter.end();
  QBrush brush(tile);
  const double scale = units_per_mm * side_mm / side;
  brush.setTransform(QTransform::fromScale(scale, scale));
  return brush;
}

QPainterPath to_path(const geometry::Polygon& polygon) {
  QPainterPath path;
  path.setFillRule(Qt::OddEvenFill);
  path.addPolygon(to_polygon(polygon.outer));
  path.closeSubpath();
  for (const geometry::Ring& hole : polygon.holes) {
    path.addPolygon(to_polygon(hole));
    path.closeSubpath();
  }
  return path;
}

}  // namespace drapewright::printing
