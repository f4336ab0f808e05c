#include "app/desktop/fields/read_number.h"

#include <QLocale>
#include <QRegularExpression>
#include <cmath>

#include "app/wording/spoken.h"

namespace drapewright::desktop {

TypedNumber read_number(const QString& text) {
  static const QRegularExpression plain("^[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)$");
  // What parts thousands in this language might be meant as a decimal mark, too.
  const QChar mark = QChar::fromLatin1(language().decimal_mark);
  const QChar parting = mark == '.' ? ',' : '.';
  const QRegularExpression grouped(QString(R"(^[+-]?[1-9]\d{0,2}[%1]\d{3}$)").arg(parting));
  QString typed = text.trimmed();
  typed.replace(QChar(0x2212), '-');  // the minus sign that word processors write
  if (typed.isEmpty()) return {};
  if (grouped.match(typed).hasMatch()) {
    QString point = typed;
    QString whole = typed;
    return {{},
            spoken("“{1}” can be read two ways: write {2} or {3}",
                   {typed, point.replace(parting, mark), whole.remove(parting)})};
  }
  if (!plain.match(typed).hasMatch()) return {{}, spoken("“{1}” is not a number", {typed})};
  bool read = false;
  const double value = QLocale::c().toDouble(typed.replace(',', '.'), &read);
  if (!read || !std::isfinite(value)) return {{}, spoken("“{1}” is not a number", {typed})};
  return {value, {}};
}

}  // namespace drapewright::desktop
