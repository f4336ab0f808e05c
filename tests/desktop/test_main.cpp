#include <gtest/gtest.h>

#include <QApplication>
#include <QSettings>
#include <QTemporaryDir>

#include "app/desktop/theme/style.h"
#include "app/wording/speak.h"

// One application for all tests of a program; settings and data go to a folder that is thrown away.
// The language is English unless the environment names another.
int main(int argc, char* argv[]) {
  testing::InitGoogleTest(&argc, argv);
  qputenv("QT_QPA_PLATFORM", "offscreen");
  QApplication program(argc, argv);
  QApplication::setApplicationName("drapewright-test");
  QApplication::setOrganizationName("drapewright-test");
  const QTemporaryDir settings;
  qputenv("XDG_DATA_HOME", settings.path().toUtf8());
  QSettings::setDefaultFormat(QSettings::IniFormat);
  QSettings::setPath(QSettings::IniFormat, QSettings::UserScope, settings.path());
  if (const QString code = qEnvironmentVariable("DRAPEWRIGHT_TEST_LANGUAGE"); !code.isEmpty()) {
    if (!drapewright::speak(code)) return 1;
  }
  drapewright::desktop::set_up_look(program, drapewright::desktop::Scheme::light);
  return RUN_ALL_TESTS();
}
