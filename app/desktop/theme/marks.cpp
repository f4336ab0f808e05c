#include "app/desktop/theme/marks.h"

#include <QPainter>
#include <QPolygonF>
#include <cmath>

#include "app/desktop/theme/palette.h"
#include "app/wording/spoken.h"
#include "core/geometry/shape.h"

namespace drapewright::desktop {
namespace {

using dressing::Severity;

QPolygonF regular(int corners, double turn_deg, double radius, QPointF centre) {
  QPolygonF polygon;
  for (int i = 0; i < corners; ++i) {
    const double angle = geometry::radians(turn_deg + 360.0 * i / corners);
    polygon << centre + radius * QPointF(std::cos(angle), std::sin(angle));
  }
  return polygon;
}

void draw_shape(QPainter& painter, Severity severity, double size) {
  const QPointF middle(size / 2, size / 2);
  switch (severity) {
    case Severity::stop:
      painter.drawPolygon(regular(8, 22.5, size * 0.5, middle));
      break;
    case Severity::warning:
      painter.drawPolygon(regular(3, -90, size * 0.56, middle + QPointF(0, size * 0.08)));
      break;
    case Severity::note:
      painter.drawEllipse(middle, size * 0.44, size * 0.44);
      break;
  }
}

void draw_sign(QPainter& painter, Severity severity, double size, const QColor& ink) {
  painter.setPen(QPen(ink, size * 0.12, Qt::SolidLine, Qt::RoundCap));
  const double x = size / 2;
  if (severity == Severity::stop) {
    painter.drawLine(QPointF(size * 0.28, x), QPointF(size * 0.72, x));
  } else if (severity == Severity::warning) {
    painter.drawLine(QPointF(x, size * 0.36), QPointF(x, size * 0.58));
    painter.drawPoint(QPointF(x, size * 0.76));
  } else {
    painter.drawPoint(QPointF(x, size * 0.30));
    painter.drawLine(QPointF(x, size * 0.48), QPointF(x, size * 0.70));
  }
}

}  // namespace

QIcon severity_mark(Severity severity, const QPalette& palette, int size_px) {
  constexpr int oversampling = 3;  // sharp at 200 and 300 % of the screen's scale
  QPixmap picture(size_px * oversampling, size_px * oversampling);
  picture.fill(Qt::transparent);
  QPainter painter(&picture);
  painter.setRenderHint(QPainter::Antialiasing);
  painter.setPen(Qt::NoPen);
  painter.setBrush(severity_ink(severity, palette));
  const double size = size_px * oversampling;
  draw_shape(painter, severity, size);
  draw_sign(painter, severity, size, palette.color(QPalette::Base));
  return QIcon(picture);
}

QColor severity_ink(Severity severity, const QPalette& palette) {
  const Inks all = inks(palette);
  return severity == Severity::stop ? all.stop
                                    : (severity == Severity::warning ? all.warning : all.note);
}

QString severity_word(Severity severity) {
  return severity == Severity::stop
             ? spoken("Stop")
             : (severity == Severity::warning ? spoken("Warning") : spoken("Note"));
}

}  // namespace drapewright::desktop
