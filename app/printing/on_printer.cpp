#include "app/printing/on_printer.h"

#include <QPageLayout>
#include <QPainter>
#include <QPrinter>

#include "app/printing/painter.h"

namespace drapewright::printing {
namespace {

/// Papers lie upright in a printer's list of sizes; a page that lies across is turned.
void lay_paper(const report::Drawing& page, QPrinter& printer) {
  const double shorter = std::min(page.width_mm, page.height_mm);
  const double longer = std::max(page.width_mm, page.height_mm);
  printer.setPageSize(QPageSize(QSizeF(shorter, longer), QPageSize::Millimeter));
  printer.setPageOrientation(page.width_mm > page.height_mm ? QPageLayout::Landscape
                                                            : QPageLayout::Portrait);
}

}  // namespace

bool print(const report::Document& document, QPrinter& printer) {
  printer.setFullPage(true);
  printer.setDocName(QString::fromStdString(document.title));
  printer.setCreator(QStringLiteral("Drapewright"));
  QPainter painter;
  for (const report::Drawing& page : document.pages) {
    lay_paper(page, printer);
    const bool begun = painter.isActive() ? printer.newPage() : painter.begin(&printer);
    if (!begun) return false;
    painter.setFont(QFont(QStringLiteral("DejaVu Sans")));
    painter.save();
    painter.scale(printer.logicalDpiX() / 25.4, printer.logicalDpiY() / 25.4);
    paint_on_paper(painter, page);
    painter.restore();
  }
  return painter.isActive() && painter.end();
}

}  // namespace drapewright::printing
