#include "app/printing/pdf_update.h"

#include <stdexcept>

namespace drapewright::printing {

namespace {

/// The text between two others, searched from a place; -1 in `from` when it is not there.
struct Slice {
  qsizetype from = -1;
  qsizetype length = 0;
};

Slice between(const QByteArray& bytes, const char* before, const char* after, qsizetype start) {
  const qsizetype at = bytes.indexOf(before, start);
  if (at < 0) return {};
  const qsizetype from = at + static_cast<qsizetype>(qstrlen(before));
  const qsizetype end = bytes.indexOf(after, from);
  return end < 0 ? Slice{} : Slice{from, end - from};
}

QByteArray found(const QByteArray& bytes, const char* before, const char* after,
                 qsizetype start = 0) {
  const Slice slice = between(bytes, before, after, start);
  if (slice.from < 0) throw std::logic_error(std::string("a PDF without ") + before);
  return bytes.mid(slice.from, slice.length).trimmed();
}

/// In place, blanks to the old length, so that nothing moves.
void set_date(QByteArray& bytes, const std::string& date) {
  constexpr const char* name = "/CreationDate ";
  const Slice old = between(bytes, name, "\n", 0);
  if (old.from < 0) throw std::logic_error("a PDF without a date");
  QByteArray words;
  if (!date.empty()) words = "(D:" + QByteArray::fromStdString(date).replace("-", "") + ")";
  if (words.isEmpty()) {
    const auto length = static_cast<qsizetype>(qstrlen(name));
    bytes.replace(old.from - length, length, QByteArray(length, ' '));
  }
  bytes.replace(old.from, old.length, words.leftJustified(old.length, ' '));
}

}  // namespace

QByteArray finished_pdf(QByteArray bytes, const report::Document& document) {
  set_date(bytes, document.date);
  const qsizetype trailer = bytes.lastIndexOf("trailer");
  const QByteArray root = found(bytes, "/Root ", " 0 R", trailer);
  const QByteArray catalogue = found(bytes, ("\n" + root + " 0 obj\n<<").constData(), ">>");
  const qsizetype at = bytes.size();
  bytes += root + " 0 obj\n<<\n" + catalogue + "\n/Lang (" +
           QByteArray::fromStdString(document.language) +
           ")\n/ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >>\n>>\nendobj\n";
  const qsizetype table = bytes.size();
  bytes += "xref\n" + root + " 1\n" + QByteArray::number(at).rightJustified(10, '0') +
           " 00000 n \ntrailer\n<<\n/Size " + found(bytes, "/Size ", "\n", trailer) + "\n/Info " +
           found(bytes, "/Info ", " 0 R", trailer) + " 0 R\n/Root " + root + " 0 R\n/Prev " +
           found(bytes, "startxref\n", "%%EOF", trailer) + "\n>>\nstartxref\n" +
           QByteArray::number(table) + "\n%%EOF\n";
  return bytes;
}

}  // namespace drapewright::printing
