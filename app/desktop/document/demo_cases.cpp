#include "app/desktop/document/demo_cases.h"

#include <QDir>
#include <QFile>
#include <array>

#include "app/wording/spoken.h"
#include "core/base/error.h"
#include "core/casefile/case_json.h"

namespace drapewright::desktop {
namespace {

const QString folder = ":/demo_cases";
const QString ending = ".json";

/// Titles are the files' names in words; here they stand for the translators.
[[maybe_unused]] constexpr std::array titles{
    term("Deep sloping wall"),
    term("Film cut short"),
    term("Island of skin"),
    term("Larger than any sheet"),
    term("Narrow arm"),
    term("No port zone"),
    term("Plain heel"),
    term("Pocket and tunnel"),
    term("Risk factors"),
    term("Series of three"),
    term("Smaller than aperture"),
    term("Traced 150 points"),
    term("Two wounds one film"),
};

QString title_of(const QString& name) {
  QString title = name;
  title.replace('-', ' ').replace('_', ' ');
  title = title.left(1).toUpper() + title.mid(1);
  return spoken(title.toStdString());
}

}  // namespace

std::vector<DemoCase> demo_cases() {
  std::vector<DemoCase> all;
  for (const QString& file : QDir(folder).entryList({"*" + ending}, QDir::Files, QDir::Name)) {
    const QString name = file.chopped(ending.size());
    all.push_back({name, title_of(name)});
  }
  return all;
}

wound::Case read_demo(const QString& name) {
  QFile file(folder + "/" + name + ending);
  if (!file.open(QIODevice::ReadOnly)) {
    throw InputError(say("there is no demo called {1}", {name.toStdString()}),
                     say("one of the File menu's"));
  }
  return casefile::case_from_json(file.readAll().toStdString(),
                                  say("{1} (demo)", {name.toStdString()}));
}

}  // namespace drapewright::desktop
