#include "app/batch/picture_files.h"

#include <QBuffer>
#include <QByteArray>
#include <QImage>
#include <string_view>

#include "app/batch/offscreen.h"
#include "app/printing/picture.h"
#include "core/base/say.h"
#include "core/casefile/text_file.h"
#include "core/report/svg.h"

namespace drapewright::batch {

void write_svg_file(const std::string& path, const report::Drawing& drawing) {
  casefile::write_text(path, report::to_svg(drawing));
}

void write_png_file(const std::string& path, const report::Drawing& drawing, double dpi) {
  const Offscreen offscreen;
  QBuffer bytes;
  bytes.open(QIODevice::WriteOnly);
  if (!printing::to_picture(drawing, dpi).save(&bytes, "PNG")) {
    throw std::runtime_error(say("the picture could not be made into PNG"));
  }
  casefile::write_text(path, std::string_view(bytes.data().constData(),
                                              static_cast<std::size_t>(bytes.data().size())));
}

}  // namespace drapewright::batch
