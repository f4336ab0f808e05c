// What the desktop is told of the program: entry and file type are well formed, agree with each
// other, and know the files that the program writes.
#include <gtest/gtest.h>

#include <QDir>
#include <QDomDocument>
#include <QFile>
#include <QRegularExpression>
#include <QSvgRenderer>

#include "tests/support/places.h"

namespace drapewright::desktop_test {
namespace {

const QString root = QString::fromStdString(support::project_folder());

QString content(const QString& path) {
  QFile file(path);
  if (!file.open(QIODevice::ReadOnly)) throw std::runtime_error("no " + path.toStdString());
  return QString::fromUtf8(file.readAll());
}

/// Keys of the one group; its lists end in a semicolon (Desktop Entry Specification 1.5).
QMap<QString, QString> desktop_entry() {
  static const QRegularExpression key_line("^([A-Za-z0-9-]+)=(.*)$");
  QMap<QString, QString> keys;
  const QStringList lines = content(root + "/resources/drapewright.desktop").split('\n');
  EXPECT_EQ(lines.front(), "[Desktop Entry]");
  for (const QString& line : lines.mid(1)) {
    if (line.isEmpty()) continue;
    const auto match = key_line.match(line);
    EXPECT_TRUE(match.hasMatch()) << line.toStdString();
    EXPECT_FALSE(keys.contains(match.captured(1))) << line.toStdString();
    keys[match.captured(1)] = match.captured(2);
  }
  return keys;
}

QDomElement mime_type() {
  QDomDocument document;
  EXPECT_TRUE(document.setContent(content(root + "/resources/drapewright-mime.xml"), true));
  EXPECT_EQ(document.documentElement().namespaceURI(),
            "http://www.freedesktop.org/standards/shared-mime-info");
  return document.documentElement().firstChildElement("mime-type");
}

TEST(Resources, DesktopEntryHasWhatTheSpecificationAsks) {
  const auto keys = desktop_entry();
  EXPECT_EQ(keys["Type"], "Application");
  EXPECT_FALSE(keys["Name"].isEmpty());
  EXPECT_EQ(keys["Exec"], "drapewright %f");
  EXPECT_EQ(keys["Terminal"], "false");
  for (const char* list : {"Categories", "Keywords", "MimeType"}) {
    EXPECT_TRUE(keys[list].endsWith(';')) << list;
  }
  EXPECT_TRUE(QFile::exists(root + "/resources/icons/" + keys["Icon"] + ".svg"));
  EXPECT_EQ(keys["MimeType"], mime_type().attribute("type") + ";");
}

TEST(Resources, FilesOfTheProgramAreOfItsType) {
  const QDomElement match = mime_type().firstChildElement("magic").firstChildElement("match");
  const int farthest = match.attribute("offset").section(':', 1).toInt();
  const QDir demos(root + "/demo_cases");
  for (const QString& name : demos.entryList({"*.json"})) {
    const auto at = content(demos.filePath(name)).indexOf(match.attribute("value"));
    EXPECT_TRUE(at >= 0 && at <= farthest) << name.toStdString();
  }
  EXPECT_EQ(mime_type().firstChildElement("glob").attribute("pattern"), "*.drapewright.json");
}

TEST(Resources, IconsCanBeDrawn) {
  const QDir icons(root + "/resources/icons");
  const QStringList names = icons.entryList({"*.svg"});
  EXPECT_TRUE(names.contains(mime_type().attribute("type").replace('/', '-') + ".svg"));
  for (const QString& name : names) {
    EXPECT_TRUE(QSvgRenderer(icons.filePath(name)).isValid()) << name.toStdString();
  }
}

}  // namespace
}  // namespace drapewright::desktop_test
