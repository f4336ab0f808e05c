#include "app/desktop/stores/shelf_place.h"

#include <QRegularExpression>
#include <QSettings>
#include <QStandardPaths>
#include <QUrl>

#include "core/base/error.h"
#include "core/base/say.h"

namespace drapewright::desktop {
namespace {

constexpr const char* setting_key = "shelf_place";

QString decoded(const QString& part) { return QUrl::fromPercentEncoding(part.toUtf8()); }
QString encoded(const QString& part) { return QString::fromUtf8(QUrl::toPercentEncoding(part)); }

}  // namespace

ShelfPlace shelf_place(const QString& setting) {
  if (!setting.startsWith("postgresql://")) return {.file = setting};
  // A socket's folder stands in the place of the host, percent-encoded: more than QUrl takes.
  static const QRegularExpression form(
      "^postgresql://(?:([^@/:]*)(:[^@/]*)?@)?([^@/:]+)(?::([0-9]{1,5}))?/([^/?#]+)$");
  const auto parts = form.match(setting);
  if (!parts.captured(2).isEmpty()) {
    throw InputError(
        say("the address of the shelf holds a password"),
        say("it in the password file of the server's client, or typed in, not in a setting"));
  }
  if (!parts.hasMatch()) {
    throw InputError(say("'{1}' is no address of a shelf", {setting.toStdString()}),
                     "postgresql://user@host:port/database");
  }
  const QString port = parts.captured(4);
  return {.file = {},
          .host = decoded(parts.captured(3)),
          .port = port.isEmpty() ? 5432 : port.toInt(),
          .database = decoded(parts.captured(5)),
          .user = decoded(parts.captured(1)),
          .password = {}};
}

QString address_of(const ShelfPlace& place) {
  if (!place.is_server()) return place.file;
  const QString user = place.user.isEmpty() ? QString() : encoded(place.user) + "@";
  return "postgresql://" + user + encoded(place.host) + ":" + QString::number(place.port) + "/" +
         encoded(place.database);
}

QString usual_shelf_file() {
  return QStandardPaths::writableLocation(QStandardPaths::AppDataLocation) + "/shelf.sqlite";
}

ShelfPlace kept_shelf_place() {
  const QString kept = QSettings().value(setting_key).toString();
  return kept.isEmpty() ? ShelfPlace{.file = usual_shelf_file()} : shelf_place(kept);
}

void keep_shelf_place(const ShelfPlace& place) {
  if (place.file == usual_shelf_file()) {
    QSettings().remove(setting_key);
  } else {
    QSettings().setValue(setting_key, address_of(place));
  }
}

}  // namespace drapewright::desktop
