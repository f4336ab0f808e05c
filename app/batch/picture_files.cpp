#include "app/batch/picture_files.h"

#include <QBuffer>
#include <QByteArray>
#include <QGuiApplication>
#include <QImage>
#include <string_view>

#include "app/printing/picture.h"
#include "core/casefile/text_file.h"
#include "core/report/svg.h"

namespace drapewright::batch {

void write_svg_file(const std::string& path, const report::Drawing& drawing) {
  casefile::write_text(path, report::to_svg(drawing));
}

void write_png_file(const std::string& path, const report::Drawing& drawing, double dpi) {
  // Qt paints text only with an application, which here must not look for a display, nor tell the
  // user about the desktop that it misses.
  qputenv("QT_QPA_PLATFORM", "offscreen");
  qInstallMessageHandler([](QtMsgType, const QMessageLogContext&, const QString&) {});
  int count = 1;
  std::string name = "drapewright-batch";
  char* arguments[] = {name.data(), nullptr};
  const QGuiApplication application(count, arguments);
  QBuffer bytes;
  bytes.open(QIODevice::WriteOnly);
  if (!printing::to_picture(drawing, dpi).save(&bytes, "PNG")) {
    throw std::runtime_error("the picture could not be made into PNG");
  }
  casefile::write_text(path, std::string_view(bytes.data().constData(),
                                              static_cast<std::size_t>(bytes.data().size())));
}

}  // namespace drapewright::batch
