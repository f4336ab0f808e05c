#include "app/desktop/fields/read_number.h"

#include <QLocale>
#include <QRegularExpression>
#include <cmath>

namespace drapewright::desktop {

TypedNumber read_number(const QString& text) {
  static const QRegularExpression plain("^[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)$");
  static const QRegularExpression grouped("^[+-]?[1-9]\\d{0,2},\\d{3}$");
  QString typed = text.trimmed();
  typed.replace(QChar(0x2212), '-');  // the minus sign that word processors write
  if (typed.isEmpty()) return {};
  if (grouped.match(typed).hasMatch()) {
    QString point = typed;
    QString whole = typed;
    return {{},
            QString("“%1” can be read two ways: write %2 or %3")
                .arg(typed, point.replace(',', '.'), whole.remove(','))};
  }
  if (!plain.match(typed).hasMatch()) return {{}, QString("“%1” is not a number").arg(typed)};
  bool read = false;
  const double value = QLocale::c().toDouble(typed.replace(',', '.'), &read);
  if (!read || !std::isfinite(value)) return {{}, QString("“%1” is not a number").arg(typed)};
  return {value, {}};
}

}  // namespace drapewright::desktop
