#pragma once

#include <QList>
#include <QString>

namespace drapewright {

/// A language that the program speaks.
struct SpokenLanguage {
  QString code;  ///< ISO 639-1: "en", "de"
  QString name;  ///< in itself: "Deutsch"
};

/// English first.
const QList<SpokenLanguage>& spoken_languages();

/// The language of the system where the program speaks it, else English.
QString language_of_system();

/// Says everything from now on in the language of this code; also what Qt itself says, where a
/// program with windows runs and Qt's own translation is installed. Once, at the start.
/// @returns false when the program does not speak it: then it goes on in English
bool speak(const QString& code);

}  // namespace drapewright
