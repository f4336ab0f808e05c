// The window in German: nothing on it is still English, and numbers are written and read as there.
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractSpinBox>
#include <QAction>
#include <QComboBox>
#include <QGroupBox>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QMenuBar>
#include <QRegularExpression>
#include <QTabWidget>
#include <QTableView>
#include <QTableWidget>
#include <QTest>

#include "app/desktop/document/case_document.h"
#include "app/desktop/pages/page_desk.h"
#include "app/desktop/stores/stores_window.h"
#include "app/desktop/tools/tracing_desk.h"
#include "app/desktop/window/drawing_pane.h"
#include "app/wording/spoken.h"
#include "core/dressing/course_log.h"
#include "core/geometry/measures.h"
#include "tests/desktop/window_driver.h"

namespace drapewright::desktop_test {
namespace {

void add(QStringList& all, const QString& text) {
  if (!text.trimmed().isEmpty()) all << text;
}

QStringList texts_of_table(const QAbstractItemView& view) {
  QStringList all;
  const auto* model = view.model();
  if (model == nullptr) return all;
  for (int column = 0; column < model->columnCount(); ++column) {
    add(all, model->headerData(column, Qt::Horizontal).toString());
    for (int row = 0; row < model->rowCount(); ++row) {
      add(all, model->index(row, column).data().toString());
    }
  }
  return all;
}

/// All that can be read, pointed at or heard.
QStringList texts_of(QWidget& window) {
  QStringList all;
  for (auto* widget : window.findChildren<QWidget*>()) {
    if (widget->objectName().startsWith("qt_")) continue;
    add(all, widget->toolTip());
    add(all, widget->accessibleName());
    add(all, widget->accessibleDescription());
    if (auto* label = qobject_cast<QLabel*>(widget)) add(all, label->text());
    if (auto* button = qobject_cast<QAbstractButton*>(widget)) add(all, button->text());
    if (auto* group = qobject_cast<QGroupBox*>(widget)) add(all, group->title());
    if (auto* line = qobject_cast<QLineEdit*>(widget)) add(all, line->placeholderText());
    if (auto* tabs = qobject_cast<QTabWidget*>(widget)) {
      for (int i = 0; i < tabs->count(); ++i) add(all, tabs->tabText(i));
    }
    if (auto* combo = qobject_cast<QComboBox*>(widget)) {
      for (int i = 0; i < combo->count(); ++i) add(all, combo->itemText(i));
    }
    if (auto* view = qobject_cast<QAbstractItemView*>(widget)) all << texts_of_table(*view);
  }
  for (auto* action : window.findChildren<QAction*>()) {
    add(all, action->text());
    add(all, action->toolTip());
  }
  all.removeDuplicates();
  return all;
}

/// Words of an English sentence that no German one has. Publications keep their titles.
bool reads_english(QString text) {
  static const QRegularExpression words(
      "(?<![-\\w])(the|and|is|are|of|with|this|that|to)(?![-\\w])");
  static const QRegularExpression quoted("[“„\"][^”“\"]*[”“\"]");
  static const QRegularExpression source("(Beruht auf|Quelle): [^\n]*|\\[[^\\]]*\\]");
  return words.match(text.remove(source).remove(quoted)).hasMatch();
}

/// Whether the catalogue has another text for it: then it was not asked.
bool was_not_asked_for(const QString& text) {
  const std::string german = language().translate(text.toStdString(), std::nullopt);
  return !german.empty() && QString::fromStdString(german) != text;
}

/// Texts that are German words as they stand, although the catalogue has them as English, too.
bool is_german_too(const QString& text) {
  static const QStringList both{"in", "man"};
  return both.contains(text);
}

void expect_german(QWidget& window, const char* where) {
  const QStringList all = texts_of(window);
  EXPECT_GT(all.size(), 10) << where;
  for (const QString& text : all) {
    if (is_german_too(text)) continue;
    EXPECT_FALSE(was_not_asked_for(text)) << where << ": " << text.toStdString();
    EXPECT_FALSE(reads_english(text)) << where << ": " << text.toStdString();
  }
}

TEST(InGerman, TheEmptyWindowIsGerman) {
  WindowDriver driver;
  expect_german(driver.window(), "empty window");
}

TEST(InGerman, EveryDemoIsGermanWithItsPlan) {
  for (const char* demo : {"film-cut-short.json", "pocket-and-tunnel.json",
                           "two-wounds-one-film.json", "risk-factors.json"}) {
    WindowDriver driver;
    ASSERT_TRUE(driver.open_demo_file(demo)) << demo;
    driver.document().edit("record", {}, [](wound::Case& value) {
      dressing::record_change(value, {.date = "2026-11-24", .placed = 2});
    });
    driver.settle();
    auto* tabs = driver.window().findChildren<QTabWidget*>().at(1);
    tabs->setCurrentIndex(1);
    QTest::qWait(50);
    expect_german(driver.window(), demo);
  }
}

TEST(InGerman, EveryToolIsExplainedInGerman) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  for (int tool = 0; tool <= static_cast<int>(desktop::Tool::limb_axis); ++tool) {
    driver.window().drawing().desk().take_up(static_cast<desktop::Tool>(tool));
    const auto words = driver.find<QLabel>("tool_words").text();
    EXPECT_FALSE(reads_english(words)) << words.toStdString();
    EXPECT_FALSE(was_not_asked_for(words)) << words.toStdString();
  }
}

TEST(InGerman, StoresAndPagesAreGerman) {
  WindowDriver driver;
  driver.draw_ellipse("8", "5");
  expect_german(driver.window().open_stores(), "stores");
  auto& pages = driver.window().open_pages();
  expect_german(pages, "pages");
  ASSERT_TRUE(QTest::qWaitFor([&] { return !pages.is_busy(); }, 20000));
  EXPECT_EQ(pages.document().language, "de");
}

TEST(InGerman, NumbersTakeACommaAndAPoint) {
  WindowDriver driver;
  driver.draw_ellipse("8,5", "5.25");
  const auto& outline = driver.document().value().current().wounds.at(0).outline_cm;
  const auto box = geometry::bounding_box(outline);
  EXPECT_NEAR(std::max(box.width(), box.height()), 8.5, 0.01);
  EXPECT_NEAR(std::min(box.width(), box.height()), 5.25, 0.01);
  const QString inset = driver.find<QAbstractSpinBox>("inset_cm").text();
  EXPECT_TRUE(inset.startsWith("0,3")) << inset.toStdString();
}

}  // namespace
}  // namespace drapewright::desktop_test
