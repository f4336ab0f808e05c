#pragma once

#include <QImage>
#include <QString>

#include "core/report/drawing.h"

namespace drapewright::printing {

/// The drawing as a picture of dots; it carries its resolution, so that viewers that honour it
/// show and print it at its scale. Needs a QGuiApplication (the offscreen platform will do).
/// @param dpi 20 to 1200
/// @throws std::invalid_argument for a resolution out of bounds
QImage to_picture(const report::Drawing& drawing, double dpi = 150,
                  report::Ground ground = report::Ground::light);

/// Writes `to_picture` as PNG, whole or not at all.
/// @throws InputError when the file cannot be written
void write_png(const QString& path, const report::Drawing& drawing, double dpi = 150,
               report::Ground ground = report::Ground::light);

}  // namespace drapewright::printing
