#include "app/desktop/stores/chart_files.h"

#include <QBuffer>
#include <QGraphicsView>
#include <QImage>
#include <QPainter>
#include <QPrinter>
#include <QSaveFile>
#include <QSvgGenerator>

#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int png_scale = 2;  // dots for one of the screen's

QByteArray as_svg(QGraphicsView& view) {
  QBuffer buffer;
  QSvgGenerator svg;
  svg.setOutputDevice(&buffer);
  svg.setSize(view.size());
  svg.setViewBox(QRect(QPoint(), view.size()));
  svg.setTitle(spoken("Forecast for the stores"));
  QPainter painter(&svg);
  view.render(&painter);
  painter.end();
  return buffer.data();
}

QByteArray as_png(QGraphicsView& view) {
  QImage image(view.size() * png_scale, QImage::Format_RGB32);
  image.fill(Qt::white);
  QPainter painter(&image);
  painter.setRenderHint(QPainter::Antialiasing);
  view.render(&painter);
  painter.end();
  QByteArray bytes;
  QBuffer buffer(&bytes);
  image.save(&buffer, "PNG");
  return bytes;
}

}  // namespace

QString save_bytes(const QByteArray& bytes, const QString& path) {
  QSaveFile file(path);
  if (file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit()) {
    return {};
  }
  return spoken("{1} cannot be written: {2}", {path, file.errorString()});
}

QString save_chart(QGraphicsView& view, const QString& path) {
  return save_bytes(path.endsWith(".svg", Qt::CaseInsensitive) ? as_svg(view) : as_png(view), path);
}

void print_chart(QGraphicsView& view, QPrinter& printer) {
  QPainter painter(&printer);
  painter.setRenderHint(QPainter::Antialiasing);
  view.render(&painter);
}

}  // namespace drapewright::desktop
