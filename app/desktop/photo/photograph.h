#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>

namespace drapewright::desktop {

/// A photograph as the program keeps it: decoded, turned as its metadata said, and written anew, so
/// that nothing of where, when and with what it was taken is left.
struct Photograph {
  QString file;      ///< its name beside a case file; made from its content
  QByteArray bytes;  ///< PNG, or JPEG where it came as one
  QImage image;
};

/// Larger pictures are made smaller: 24 megapixels, 6000 x 4000.
inline constexpr int most_photo_px = 6000;

/// @throws InputError that names the file: not there, no picture that can be read, too large
Photograph read_photograph(const QString& path);
/// From the clipboard or another program.
/// @throws InputError for a null image
Photograph photograph_from(const QImage& image);
/// Of a picture that lies beside a case file. @throws InputError as above
Photograph read_kept_photograph(const QString& folder, const QString& file);

}  // namespace drapewright::desktop
