#pragma once

#include <QByteArray>

#include "core/report/paper.h"

namespace drapewright::printing {

/// A PDF as QPdfWriter leaves it, with what that cannot say: the document's date in place of the
/// clock's, its language, and the viewer's preferences (no scaling, the title in the window's
/// bar). They are appended as an incremental update (ISO 32000-1, 7.5.6), which leaves every byte
/// before them where it was.
/// @throws std::logic_error for a file that is not built as expected
QByteArray finished_pdf(QByteArray bytes, const report::Document& document);

}  // namespace drapewright::printing
