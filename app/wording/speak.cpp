#include "app/wording/speak.h"

#include <QCoreApplication>
#include <QLibraryInfo>
#include <QLocale>
#include <QTranslator>
#include <algorithm>
#include <memory>

#include "core/base/say.h"

namespace drapewright {
namespace {

/// The answer of a catalogue in core's terms. QTranslator chooses the plural form.
Language language_of(std::shared_ptr<QTranslator> catalogue, char decimal_mark) {
  return {.translate =
              [catalogue](std::string_view english, std::optional<int> count) {
                const std::string id(english);
                return catalogue->translate("", id.c_str(), nullptr, count.value_or(-1))
                    .toStdString();
              },
          .decimal_mark = decimal_mark};
}

/// The buttons of Qt's own dialogs.
void translate_qt(const QLocale& locale) {
  QCoreApplication* program = QCoreApplication::instance();
  if (program == nullptr) return;
  auto* texts = new QTranslator(program);
  if (texts->load(locale, "qtbase", "_", QLibraryInfo::path(QLibraryInfo::TranslationsPath))) {
    QCoreApplication::installTranslator(texts);
  }
}

}  // namespace

const QList<SpokenLanguage>& spoken_languages() {
  static const QList<SpokenLanguage> list{{"en", "English"}, {"de", "Deutsch"}};
  return list;
}

QString language_of_system() {
  const QString code = QLocale::system().name().left(2);
  const auto& list = spoken_languages();
  const bool known = std::any_of(list.begin(), list.end(),
                                 [&](const SpokenLanguage& one) { return one.code == code; });
  return known ? code : list.front().code;
}

bool speak(const QString& code) {
  if (code == spoken_languages().front().code) {
    set_language({});
    return true;
  }
  auto catalogue = std::make_shared<QTranslator>();
  if (!catalogue->load(":/translations/" + code + ".qm")) return false;
  const QLocale locale(code);
  set_language(language_of(catalogue, locale.decimalPoint().at(0).toLatin1()));
  QLocale::setDefault(locale);
  translate_qt(locale);
  return true;
}

}  // namespace drapewright
