#pragma once

#include <QIcon>

#include "core/dressing/finding.h"

namespace drapewright::desktop {

/// How a finding's weight is shown: a shape of its own (octagon, triangle, disc), a word and an
/// ink, so that colour alone carries nothing.
QIcon severity_mark(dressing::Severity severity, const QPalette& palette, int size_px);
QColor severity_ink(dressing::Severity severity, const QPalette& palette);
/// "Stop", "Warning", "Note".
QString severity_word(dressing::Severity severity);

}  // namespace drapewright::desktop
