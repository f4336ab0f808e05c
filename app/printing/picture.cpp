#include "app/printing/picture.h"

#include <QPainter>
#include <QSaveFile>
#include <cmath>
#include <stdexcept>

#include "app/printing/painter.h"
#include "core/base/error.h"

namespace drapewright::printing {

namespace {

constexpr double mm_per_inch = 25.4;

}  // namespace

QImage to_picture(const report::Drawing& drawing, double dpi, report::Ground ground) {
  if (!(dpi >= 20 && dpi <= 1200)) throw std::invalid_argument("dpi must be 20 to 1200");
  const double dots_per_mm = dpi / mm_per_inch;
  QImage picture(static_cast<int>(std::ceil(drawing.width_mm * dots_per_mm)),
                 static_cast<int>(std::ceil(drawing.height_mm * dots_per_mm)),
                 QImage::Format_RGB32);
  picture.fill(Qt::white);
  QPainter painter(&picture);
  painter.scale(dots_per_mm, dots_per_mm);
  paint(painter, drawing, ground);
  painter.end();
  const int dots_per_metre = static_cast<int>(std::lround(1000 * dots_per_mm));
  picture.setDotsPerMeterX(dots_per_metre);
  picture.setDotsPerMeterY(dots_per_metre);
  picture.setText("Title", QString::fromStdString(drawing.title));
  picture.setText("Description", QString::fromStdString(drawing.description));
  return picture;
}

void write_png(const QString& path, const report::Drawing& drawing, double dpi,
               report::Ground ground) {
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly) || !to_picture(drawing, dpi, ground).save(&file, "PNG") ||
      !file.commit()) {
    throw InputError("the picture cannot be written: " + file.errorString().toStdString(),
                     "a folder that may be written to", Place{.file = path.toStdString()});
  }
}

}  // namespace drapewright::printing
