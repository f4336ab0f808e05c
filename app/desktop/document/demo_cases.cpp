#include "app/desktop/document/demo_cases.h"

#include <QDir>
#include <QFile>

#include "app/wording/spoken.h"
#include "core/base/error.h"
#include "core/casefile/case_json.h"

namespace drapewright::desktop {
namespace {

const QString folder = ":/demo_cases";
const QString ending = ".json";

QString title_of(const QString& name) {
  QString title = name;
  title.replace('-', ' ').replace('_', ' ');
  return title.left(1).toUpper() + title.mid(1);
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
