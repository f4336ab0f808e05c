#include "app/desktop/window/appearance.h"

#include <QActionGroup>
#include <QApplication>
#include <QMenu>
#include <QSettings>
#include <algorithm>

#include "app/desktop/theme/style.h"
#include "app/wording/speak.h"
#include "app/wording/spoken.h"

namespace drapewright::desktop {
namespace {

constexpr int text_sizes[] = {100, 125, 150, 200};

Scheme chosen_scheme() {
  return static_cast<Scheme>(std::clamp(QSettings().value("scheme", 0).toInt(), 0, 2));
}

int chosen_text_size() {
  const int percent = QSettings().value("text_percent", 100).toInt();
  return std::clamp(percent, text_sizes[0], text_sizes[3]);
}

QApplication& program() { return *static_cast<QApplication*>(QApplication::instance()); }

}  // namespace

Appearance::Appearance(QObject* parent) : QObject(parent) {}

void Appearance::restore() {
  set_up_look(program(), chosen_scheme());
  if (chosen_text_size() != 100) set_text_size(program(), chosen_text_size());
  if (touch_sizes()) set_touch_sizes(program(), true);
}

void Appearance::add_to(QMenu& menu) {
  add_schemes(*menu.addMenu(spoken("&Appearance")));
  add_text_sizes(*menu.addMenu(spoken("&Text size")));
  add_touch_sizes(menu);
  // In both languages, so that whoever cannot read the one finds the other.
  add_languages(*menu.addMenu("Lan&guage / Sprache"));
}

void Appearance::restore_language() {
  const QString code = QSettings().value("language").toString();
  speak(code.isEmpty() ? language_of_system() : code);
}

void Appearance::add_languages(QMenu& menu) {
  menu.setObjectName("languages");
  auto* group = new QActionGroup(this);
  const QString chosen = QSettings().value("language").toString();
  const auto add = [&](const QString& title, const QString& code) {
    QAction* action = group->addAction(menu.addAction(title));
    action->setCheckable(true);
    action->setChecked(chosen == code);
    connect(action, &QAction::triggered, this, [this, code] {
      QSettings().setValue("language", code);
      emit language_chosen();
    });
  };
  add(spoken("As the &system"), {});
  for (const SpokenLanguage& language : spoken_languages()) add(language.name, language.code);
}

bool Appearance::touch_sizes() { return QSettings().value("touch_sizes", false).toBool(); }

void Appearance::add_touch_sizes(QMenu& menu) {
  QAction* action = menu.addAction(spoken("&Large buttons, for fingers"));
  action->setObjectName("touch_sizes");
  action->setCheckable(true);
  action->setChecked(touch_sizes());
  connect(action, &QAction::toggled, this, [this](bool on) {
    QSettings().setValue("touch_sizes", on);
    set_touch_sizes(program(), on);
    emit touch_sizes_changed(on);
  });
}

void Appearance::add_schemes(QMenu& menu) {
  auto* group = new QActionGroup(this);
  const QStringList titles{spoken("As the &system"), spoken("&Light"), spoken("&Dark")};
  for (int i = 0; i < titles.size(); ++i) {
    QAction* action = group->addAction(menu.addAction(titles[i]));
    action->setCheckable(true);
    action->setChecked(static_cast<int>(chosen_scheme()) == i);
    connect(action, &QAction::triggered, this, [i] {
      QSettings().setValue("scheme", i);
      set_up_look(program(), static_cast<Scheme>(i));
    });
  }
}

void Appearance::add_text_sizes(QMenu& menu) {
  auto* group = new QActionGroup(this);
  for (const int percent : text_sizes) {
    QAction* action = group->addAction(menu.addAction(QString("%1 %").arg(percent)));
    action->setCheckable(true);
    action->setChecked(chosen_text_size() == percent);
    connect(action, &QAction::triggered, this, [percent] {
      QSettings().setValue("text_percent", percent);
      set_text_size(program(), percent);
    });
  }
}

}  // namespace drapewright::desktop
