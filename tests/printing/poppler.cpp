#include "tests/printing/poppler.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QProcess>
#include <QTemporaryDir>

namespace drapewright::printing {

namespace {

QByteArray output_of(const QString& program, QStringList arguments, const QByteArray& pdf) {
  const QTemporaryDir folder;
  QFile file(folder.filePath("pages.pdf"));
  EXPECT_TRUE(file.open(QIODevice::WriteOnly));
  file.write(pdf);
  file.close();
  arguments << file.fileName();
  if (program == "pdftotext") arguments << "-";
  QProcess process;
  process.start(program, arguments);
  EXPECT_TRUE(process.waitForFinished()) << program.toStdString() << " (Debian: poppler-utils)";
  EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
  EXPECT_EQ(process.readAllStandardError().toStdString(), "");
  return process.readAllStandardOutput();
}

}  // namespace

QImage drawn_by_poppler(const QByteArray& pdf, int page, int dpi) {
  const QString number = QString::number(page);
  const QByteArray picture =
      output_of("pdftoppm", {"-gray", "-r", QString::number(dpi), "-f", number, "-l", number}, pdf);
  const QImage image = QImage::fromData(picture, "PGM");
  EXPECT_FALSE(image.isNull());
  return image;
}

QString text_by_poppler(const QByteArray& pdf) {
  return QString::fromUtf8(output_of("pdftotext", {"-layout"}, pdf));
}

QString info_by_poppler(const QByteArray& pdf) {
  return QString::fromUtf8(output_of("pdfinfo", {}, pdf));
}

}  // namespace drapewright::printing
