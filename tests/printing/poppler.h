#pragma once

#include <QByteArray>
#include <QImage>
#include <QString>

namespace drapewright::printing {

/// A page of a PDF as another program draws it (poppler's pdftoppm), in shades of grey. Fails the
/// test, and gives no picture, where that program is missing or refuses the file.
QImage drawn_by_poppler(const QByteArray& pdf, int page, int dpi);

/// What pdftotext reads, and what pdfinfo says of it.
QString text_by_poppler(const QByteArray& pdf);
QString info_by_poppler(const QByteArray& pdf);

}  // namespace drapewright::printing
