#include "app/printing/pdf.h"

#include <QBuffer>
#include <QFont>
#include <QHashFunctions>
#include <QPageLayout>
#include <QPainter>
#include <QPdfWriter>

#include "app/printing/painter.h"
#include "app/printing/pdf_update.h"

namespace drapewright::printing {

namespace {

constexpr int dots_per_inch = 1200;
constexpr double dots_per_mm = dots_per_inch / 25.4;

/// QPdfWriter puts fonts into the file in the order of a hash table, which is another in every run
/// unless the hash has a fixed seed.
class FixedHashOrder {
 public:
  FixedHashOrder() { QHashSeed::setDeterministicGlobalSeed(); }
  ~FixedHashOrder() { QHashSeed::resetRandomGlobalSeed(); }
  FixedHashOrder(const FixedHashOrder&) = delete;
  FixedHashOrder& operator=(const FixedHashOrder&) = delete;
};

QPageLayout layout_of(const report::Drawing& page) {
  const QPageSize size(QSizeF(page.width_mm, page.height_mm), QPageSize::Millimeter, QString(),
                       QPageSize::ExactMatch);
  return QPageLayout(size, QPageLayout::Portrait, QMarginsF(), QPageLayout::Millimeter);
}

}  // namespace

QByteArray to_pdf(const report::Document& document) {
  const FixedHashOrder fixed;
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  {
    QPdfWriter writer(&buffer);
    writer.setResolution(dots_per_inch);
    writer.setTitle(QString::fromStdString(document.title));
    writer.setCreator(QStringLiteral("Drapewright"));
    QPainter painter;
    for (const report::Drawing& page : document.pages) {
      writer.setPageLayout(layout_of(page));
      if (painter.isActive()) {
        writer.newPage();
      } else {
        painter.begin(&writer);
        painter.setFont(QFont(QStringLiteral("DejaVu Sans")));
      }
      painter.save();
      painter.scale(dots_per_mm, dots_per_mm);
      paint_on_paper(painter, page);
      painter.restore();
    }
  }
  return finished_pdf(bytes, document);
}

}  // namespace drapewright::printing
