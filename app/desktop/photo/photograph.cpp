#include "app/desktop/photo/photograph.h"

#include <QBuffer>
#include <QCryptographicHash>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>
#include <algorithm>

#include "app/wording/spoken.h"
#include "core/base/error.h"

namespace drapewright::desktop {
namespace {

constexpr int jpeg_quality = 92;
constexpr int name_digits = 12;
constexpr int most_megabytes = 600;  ///< of a decoded picture: more is a mistake or an attack

/// Pixels alone: whatever text came with the picture stays behind.
QImage bare(const QImage& read) {
  QImage image = read;
  if (std::max(image.width(), image.height()) > most_photo_px) {
    image =
        image.scaled(most_photo_px, most_photo_px, Qt::KeepAspectRatio, Qt::SmoothTransformation);
  }
  QImage pixels(image.size(), QImage::Format_RGB32);
  pixels.fill(Qt::white);
  QPainter painter(&pixels);
  painter.drawImage(0, 0, image);
  return pixels;
}

Photograph written_anew(const QImage& read, bool as_jpeg) {
  Photograph photo{.image = bare(read)};
  QBuffer buffer(&photo.bytes);
  buffer.open(QIODevice::WriteOnly);
  photo.image.save(&buffer, as_jpeg ? "JPG" : "PNG", as_jpeg ? jpeg_quality : -1);
  const QByteArray hash = QCryptographicHash::hash(photo.bytes, QCryptographicHash::Sha256).toHex();
  photo.file = "photo-" + QString::fromLatin1(hash.left(name_digits)) + (as_jpeg ? ".jpg" : ".png");
  return photo;
}

QImage decoded(const QString& path, QByteArray* format) {
  QImageReader::setAllocationLimit(most_megabytes);
  QImageReader reader(path);
  reader.setDecideFormatFromContent(true);
  reader.setAutoTransform(true);
  *format = reader.format();
  const QString name = QFileInfo(path).fileName();
  if (!QFileInfo(path).isFile()) {
    throw InputError(say("“{1}” is not there", {name.toStdString()}), say("a PNG or JPEG picture"));
  }
  QImage image;
  if (*format == "png" || *format == "jpeg") image = reader.read();
  if (image.isNull()) {
    throw InputError(say("“{1}” is no picture that can be read ({2})",
                         {name.toStdString(), reader.errorString().toStdString()}),
                     say("a PNG or JPEG picture"));
  }
  return image;
}

}  // namespace

Photograph read_photograph(const QString& path) {
  QByteArray format;
  const QImage image = decoded(path, &format);
  return written_anew(image, format == "jpeg");
}

Photograph photograph_from(const QImage& image) {
  if (image.isNull())
    throw InputError(say("there is no picture"), say("a picture on the clipboard"));
  return written_anew(image, false);
}

Photograph read_kept_photograph(const QString& folder, const QString& file) {
  const QString path = QDir(folder).filePath(file);
  QByteArray format;
  Photograph photo{.file = file, .image = bare(decoded(path, &format))};
  QFile kept(path);
  if (kept.open(QIODevice::ReadOnly)) photo.bytes = kept.readAll();
  return photo;
}

}  // namespace drapewright::desktop
