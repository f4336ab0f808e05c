#pragma once

#include <QByteArray>

#include "core/report/paper.h"

namespace drapewright::printing {

/// The pages as PDF 1.4 at their own size: real text in embedded fonts, title and language in the
/// document, and the wish to be printed unscaled. Equal documents give equal bytes: the date
/// inside is the document's. Needs a QGuiApplication (the offscreen platform will do).
QByteArray to_pdf(const report::Document& document);

}  // namespace drapewright::printing
