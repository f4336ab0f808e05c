#pragma once

#include <QString>

class QGraphicsView;
class QPrinter;

namespace drapewright::desktop {

// A chart as it is seen, in a file or on paper; on light ground whatever the screen has.

/// @param path ends in .svg or .png @return what went wrong; empty when all went well
QString save_chart(QGraphicsView& view, const QString& path);
/// Puts `bytes` in the place of a file. @return what went wrong; empty when all went well
QString save_bytes(const QByteArray& bytes, const QString& path);
void print_chart(QGraphicsView& view, QPrinter& printer);

}  // namespace drapewright::desktop
