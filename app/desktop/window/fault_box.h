#pragma once

#include <QString>

#include "core/base/error.h"

class QWidget;

namespace drapewright::desktop {

/// Tells what went wrong, where, what was expected, and what that leaves unchanged. Modal: nothing
/// else can be done until it was read.
void show_fault(QWidget* parent, const QString& headline, const InputError& error,
                const QString& unchanged);

/// "line 3, column 5, at /assessments/0/date", "at the point 2.5, 3.0 cm"; empty when unknown.
QString where_in_words(const Place& place);

}  // namespace drapewright::desktop
