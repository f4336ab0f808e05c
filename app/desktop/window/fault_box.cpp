#include "app/desktop/window/fault_box.h"

#include <QMessageBox>

#include "app/wording/spoken.h"
#include "core/base/numbers.h"

namespace drapewright::desktop {
namespace {

QString sentence(const std::string& text) {
  QString made = QString::fromStdString(text);
  if (!made.isEmpty()) made[0] = made[0].toUpper();
  return made;
}

}  // namespace

QString where_in_words(const Place& place) {
  QStringList parts;
  if (place.text) {
    parts << spoken("line {1}, column {2}", {place.text->line, place.text->column});
  }
  if (!place.pointer.empty()) parts << spoken("at {1}", {place.pointer});
  if (place.drawing) {
    parts << spoken("at the point {1}; {2} cm",
                    {QString::fromStdString(format_short(place.drawing->x_cm)),
                     QString::fromStdString(format_short(place.drawing->y_cm))});
  }
  return parts.join(", ");
}

void show_fault(QWidget* parent, const QString& headline, const InputError& error,
                const QString& unchanged) {
  QStringList lines{sentence(error.problem()) + "."};
  const QString where = where_in_words(error.place());
  if (!where.isEmpty()) lines << spoken("Where: {1}.", {where});
  if (!error.expected().empty()) {
    lines << spoken("Expected: {1}.", {error.expected()});
  }
  lines << unchanged;
  QMessageBox box(QMessageBox::Warning, "Drapewright", headline, QMessageBox::Ok, parent);
  box.setObjectName("fault");
  box.setInformativeText(lines.join("\n"));
  box.setTextInteractionFlags(Qt::TextSelectableByMouse | Qt::TextSelectableByKeyboard);
  box.exec();
}

}  // namespace drapewright::desktop
